package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// timingCommand draws the timing chart of a line and finds how fast it may be set.
func (p *program) timingCommand() *cobra.Command {
	var flags lineFlags
	var drawn string
	var velocity bool
	cmd := &cobra.Command{
		Use:   "timing FILE",
		Short: "Timing chart, margins of the motions, and the speed ceiling",
		Long: "timing computes the motions that a line file describes at its setting: the time budget of a cycle, the margins of the " +
			"interlocks, peaks and motor loads of every axis, dose, slosh and seal, and the highest setting that each limit allows. " +
			"Nothing is simulated. Of several conveyors the chart shows the one that binds.",
		Example: "  dwellcast timing line.yaml\n  dwellcast timing line.yaml --set \"setting=1600 cartons/h\"\n  dwellcast timing line.yaml --chart timing.svg --velocity",
		Args:    oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			out, err := flags.outputFlags.open()
			if err != nil {
				return err
			}
			picture, err := newPicture(drawn)
			if err != nil {
				return err
			}
			if velocity && drawn == "" {
				return usage("add --chart timing.svg", "--velocity is for a chart")
			}
			timing, err := flags.timing(args[0])
			if err != nil {
				return err
			}
			if drawn != "" && len(timing.Conveyors) == 0 {
				return usage("a timing chart shows the stations of an indexing conveyor", "%s has no conveyor to draw", args[0])
			}
			if err := picture.draw(func() drawer { return reports.TimingChart(timing, timing.BindingConveyor(), velocity) }); err != nil {
				return err
			}
			return p.send(out, func(w io.Writer, style reports.Style) error { return reports.Timing(w, timing, out.format, style) })
		},
	}
	flags.add(cmd)
	cmd.Flags().StringVar(&drawn, "chart", "", "`file` to draw the timing chart to, .svg, .png or .pdf")
	cmd.Flags().BoolVar(&velocity, "velocity", false, "draw the velocities in a second panel of the chart")
	return cmd
}

// timing reads the line file and times it.
func (f *lineFlags) timing(path string) (*scenarios.Timing, error) {
	file, err := f.open(path)
	if err != nil {
		return nil, err
	}
	timing, err := scenarios.TimingOf(file)
	if errors.Is(err, scenarios.ErrNoSetting) {
		return nil, usage("add setting: 1450 cartons/h to the file, or --set \"setting=1450 cartons/h\"", "%s: %w", path, err)
	}
	return timing, err
}

// withinCeiling refuses a line that the mechanics or the seal don't allow, or warns of it where the user goes beyond on purpose.
func (p *program) withinCeiling(file *scenarios.File, beyond bool) error {
	broken := scenarios.BeyondCeiling(file)
	if len(broken) == 0 {
		return nil
	}
	first, setting := broken[0], file.Line.Setting
	allows := first.Allows(motion.CartonsPerHour(setting))
	err := fmt.Errorf("the setting of %s is beyond what %s allows (%s)", quantity.FormatRate(setting), first.Where, allows)
	switch {
	case first.Lowest > 0 && setting > 0:
		err = fmt.Errorf("the setting of %s is below what %s allows (%s)", quantity.FormatRate(setting), first.Where, allows)
	case first.Kind == motion.OpenLimit:
		err = fmt.Errorf("the glue of %s lies open for too long (%s)", first.Where, allows)
	case first.Kind == motion.SealLimit:
		err = fmt.Errorf("the seal of %s is none at any setting (%s)", first.Where, allows)
	}
	if beyond {
		complain(p.stderr, fmt.Errorf("warning: %w", err))
		return nil
	}
	return &complaint{err, "dwellcast timing shows all limits; --beyond-ceiling simulates it all the same", badInput}
}
