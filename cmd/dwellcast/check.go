package main

import (
	"io"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
)

// checkCommand says what a line is, and what a cycle of it needs.
func (p *program) checkCommand() *cobra.Command {
	var flags lineFlags
	var drawn pictureFlag
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Check a line file; say in words and a time budget what the line is",
		Long: "check reads a line file and says in words what the line is, with the time budget of one cycle: what each station " +
			"needs, which is critical, how much slack the others have, and where that changes. Nothing is simulated.",
		Example: "  dwellcast check line.yaml\n  dwellcast check line.yaml --set sealer.dwell=1.3s\n  dwellcast check line.yaml --chart line.svg",
		Args:    oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			out, err := flags.outputFlags.open()
			if err != nil {
				return err
			}
			picture, err := newPicture(drawn.chart)
			if err != nil {
				return err
			}
			file, err := flags.open(args[0])
			if err != nil {
				return err
			}
			budget := scenarios.Check(file)
			if err := picture.draw(func() drawer { return reports.PlanChart(budget) }); err != nil {
				return err
			}
			return p.send(out, func(w io.Writer, style reports.Style) error { return reports.Budget(w, budget, out.format, style) })
		},
	}
	flags.add(cmd)
	drawn.add(cmd.Flags())
	return cmd
}
