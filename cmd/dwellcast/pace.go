package main

import (
	"errors"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// paceFlags are the flags of the pace command.
type paceFlags struct {
	studyFlags
	from, to, zone, target string
	settings               int
}

// paceCommand recommends a setting.
func (p *program) paceCommand() *cobra.Command {
	var flags paceFlags
	cmd := &cobra.Command{
		Use:   "pace FILE",
		Short: "Recommend a speed setting, with the reason",
		Long: "pace runs the same shifts of the line at many settings, selects the best with a guarantee, and recommends the slowest\n" +
			"setting whose output is as good. It says what limits beyond that, and what five percent more speed would bring or cost.\n" +
			"Stops, misses and rejects grow with speed as the tables by_setting of the line file say; for causes without a table it\n" +
			"shows what becomes of the answer if they grow in proportion to speed, or with its square.",
		Example: "  dwellcast pace line.yaml\n  dwellcast pace line.yaml --from 1200cartons/h --to 1600cartons/h --settings 17\n" +
			"  dwellcast pace line.yaml --zone 1% --target \"9800 cartons\"",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error { return p.pace(cmd, args[0], &flags) },
	}
	flags.add(cmd, "100 at each setting")
	cmd.Flags().StringVar(&flags.from, "from", "", "lowest `setting` to look at; by default 70 % of what the line can follow")
	cmd.Flags().StringVar(&flags.to, "to", "", "highest `setting` to look at; by default a quarter beyond what the line can follow")
	cmd.Flags().IntVar(&flags.settings, "settings", 0, "`number` of settings; 0 takes about 16 at a round step, and some more about the answer")
	cmd.Flags().StringVar(&flags.zone, "zone", "0.5%", "`share` of output below which a difference does not matter")
	cmd.Flags().StringVar(&flags.target, "target", "", "good `cartons` per shift that are wanted; by default the file's target")
	return cmd
}

func (p *program) pace(cmd *cobra.Command, path string, flags *paceFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	file, err := flags.open(path)
	if err != nil {
		return err
	}
	spec, err := flags.spec(file, options)
	if err != nil {
		return err
	}
	lab, err := flags.lab(studyText(cmd, file, flags.from, flags.to, flags.zone, flags.target, cmd.Flags().Lookup("settings").Value.String()), options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.RunPace(cmd.Context(), lab, file, options.Seed, spec)
	bar.end()
	if err != nil {
		return flags.ended("pace", lab, err)
	}
	origin := originOf(cmd, path)
	if err := p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Pace(w, answer, origin, out.format, style)
	}); err != nil {
		return err
	}
	if !answer.Guaranteed {
		return &complaint{errors.New("the selection did not come to its end with the shifts allowed"), "give more --shifts, or a wider --zone", notMet}
	}
	return nil
}

// spec checks the flags.
func (f *paceFlags) spec(file *scenarios.File, o scenarios.Options) (decisions.PaceSpec, error) {
	s := decisions.PaceSpec{Settings: f.settings, Replications: f.replications, Confidence: o.Confidence}
	if f.settings != 0 && (f.settings < 2 || f.settings > 500) {
		return s, usage("give 2 to 500, or 0 for about 16", "--settings is %d", f.settings)
	}
	var err error
	if s.From, err = rate("--from", f.from); err != nil {
		return s, err
	}
	if s.To, err = rate("--to", f.to); err != nil {
		return s, err
	}
	if s.Zone, err = share("--zone", f.zone, 1e-5, 0.2); err != nil {
		return s, err
	}
	s.Target, err = perShift("--target", f.target, file)
	return s, err
}

// rate reads a flag such as 1450cartons/h; 0 where it is not given.
func rate(flag, text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	q, err := quantity.ParseAs(text, quantity.Rate)
	if err != nil {
		return 0, quantityComplaint(flag, err)
	}
	x, err := q.PerHour()
	if err != nil || !(x > 0) || x > 1e6 {
		return 0, usage("give a rate above 0, such as 1450cartons/h", "%s is %s", flag, text)
	}
	return x, nil
}

// perShift reads a target, as cartons per shift or as a rate over the whole shift; 0 where it is not given.
func perShift(flag, text string, file *scenarios.File) (float64, error) {
	if text == "" {
		return 0, nil
	}
	q, err := quantity.Parse(text)
	switch {
	case err != nil:
		return 0, quantityComplaint(flag, err)
	case q.Is(quantity.Rate):
		perHour, err := rate(flag, text)
		return perHour * file.Line.Shift.Length.Hours(), err
	}
	x, err := q.In("cartons")
	if err != nil || !(x > 0) {
		return 0, usage("write it like 9500cartons or 1200cartons/h", "%s is %s", flag, text)
	}
	return x, nil
}

// quantityComplaint says what is wrong with a quantity in a flag.
func quantityComplaint(flag string, err error) error {
	hint := ""
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		hint = e.Hint
		return usage(hint, "%s: %s", flag, strings.TrimSpace("\""+e.Text+"\" "+e.Message))
	}
	return usage(hint, "%s: %w", flag, err)
}
