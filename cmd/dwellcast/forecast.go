package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim"
	"dwellcast/stations"
)

// runFlags are the flags of the run command.
type runFlags struct {
	studyFlags // of which the file of results is for an explanation
	pictureFlag
	precision     string
	explain       bool
	beyondCeiling bool
	trace         string // file for what the first shift did
}

// runCommand simulates a line and forecasts its output.
func (p *program) runCommand() *cobra.Command {
	var flags runFlags
	cmd := &cobra.Command{
		Use:   "run FILE",
		Short: "Simulate a line: good output, what limits it, where the rest goes",
		Long: "run simulates independent shifts of the line, each from an empty line, or one long run where the file asks for steady " +
			"figures. The same file, seed and version give the same figures, whatever the number of workers.\n" +
			"Exit status 3: the wanted precision was not reached.",
		Example: "  dwellcast run line.yaml\n  dwellcast run line.yaml --precision 0.5% --set sealer.dwell=1.1s\n" +
			"  dwellcast run line.yaml --format json --output forecast.json\n" +
			"  dwellcast run line.yaml --explain",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error { return p.forecast(cmd, args[0], &flags) },
	}
	flags.studyFlags.add(cmd, "`number` of shifts; 0 takes what two processors do in about a second")
	flags.pictureFlag.add(cmd.Flags())
	cmd.Flags().StringVar(&flags.precision, "precision", "", "add shifts until the half-width of the good rate is this `share` of it, such as 0.5%")
	cmd.Flags().BoolVar(&flags.beyondCeiling, "beyond-ceiling", false, "simulate a setting that the mechanics of the line don't allow, with a warning")
	cmd.Flags().StringVar(&flags.trace, "trace", "", "write what every station did in the first shift to this CSV `file`")
	cmd.Flags().BoolVar(&flags.explain, "explain", false, "say too what fixing each cause of loss, and making each station faster, would bring")
	cmd.Flags().Lookup("resume").Usage = "`file` of results to go on from with --explain, and to keep them in when interrupted"
	return cmd
}

// forecast checks the flags, reads the line, runs it, and writes the report.
func (p *program) forecast(cmd *cobra.Command, path string, flags *runFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	picture, err := newPicture(flags.chart)
	if err != nil {
		return err
	}
	file, err := flags.open(path)
	if err != nil {
		return err
	}
	if file.Steady != nil && flags.replications > 0 && !flags.explain {
		return usage("leave --shifts out, or the key run out of the file; run: {batches: 40} gives the number of batches", "the file asks for one long run, which has no shifts")
	}
	if err := p.withinCeiling(file, flags.beyondCeiling); err != nil {
		return err
	}
	if flags.trace != "" {
		if err := p.trace(cmd.Context(), file, flags.seed, flags.trace); err != nil {
			return err
		}
	}
	forecast, err := p.simulate(cmd.Context(), file, options)
	if err != nil {
		return err
	}
	forecast.Version = scenarios.Version
	if flags.explain && !forecast.Interrupted {
		return p.explain(cmd, path, flags, file, forecast, options, out, picture)
	}
	if err := picture.draw(func() drawer { return reports.ForecastChart(forecast) }); err != nil {
		return err
	}
	if !forecast.Interrupted { // another one would stop elsewhere
		forecast.Repeat = originOf(cmd, path).Line
	}
	return p.deliver(forecast, options, out)
}

// begin checks the flags, before any work is done.
func (f *runFlags) begin() (o scenarios.Options, out output, err error) {
	if o, out, err = f.studyFlags.begin(); err != nil {
		return o, out, err
	}
	if f.precision != "" {
		if o.Precision, err = share("--precision", f.precision, 1e-5, 0.5); err != nil {
			return o, out, err
		}
	}
	switch {
	case f.resume != "" && !f.explain:
		return o, out, usage("add --explain, or leave it out", "--resume goes on with an explanation only")
	case f.replications == 1 && f.explain:
		return o, out, usage("give 2 or more", "one shift explains nothing")
	}
	if f.trace != "" {
		_, err = newOutput(f.trace, csvFormat)
	}
	return o, out, err
}

// simulate runs the line and shows how far it has come.
func (p *program) simulate(ctx context.Context, file *scenarios.File, o scenarios.Options) (*scenarios.Forecast, error) {
	counts := countsShifts
	if file.Steady != nil {
		counts = "parts of the run"
	}
	progress := newProgress(p.stderr, counts, time.Now())
	defer progress.end()
	o.Progress = func(done, total int) { progress.tell(done, total, time.Now()) }
	forecast, err := scenarios.Run(ctx, file, o)
	if err != nil {
		return nil, runComplaint(err)
	}
	return forecast, nil
}

// csvFormat is how a trace is written, whatever its file is called.
const csvFormat = string(reports.CSV)

// trace writes what the first shift of the run does.
func (p *program) trace(ctx context.Context, file *scenarios.File, seed uint64, path string) error {
	out, err := newOutput(path, csvFormat)
	if err != nil {
		return err
	}
	list, err := scenarios.Trace(ctx, file, seed)
	if err != nil {
		return runComplaint(err)
	}
	return p.send(out, func(w io.Writer, _ reports.Style) error { return reports.Trace(w, list) })
}

// deliver writes the report, and says what the exit status will.
func (p *program) deliver(f *scenarios.Forecast, o scenarios.Options, out output) error {
	if f.Interrupted && f.Replications == 0 {
		return &complaint{errors.New("interrupted before the first shift was done"), "nothing is known yet; run it again", failed}
	}
	if err := p.send(out, func(w io.Writer, style reports.Style) error { return reports.Forecast(w, f, out.format, style) }); err != nil {
		return err
	}
	return verdict(f, o)
}

// runComplaint says why a line could not be simulated; a line that can't move is a mistake in its file.
func runComplaint(err error) error {
	if errors.Is(err, sim.ErrOverfull) {
		return &complaint{sim.ErrOverfull, "give it a capacity, or make the station behind it faster; dwellcast check shows how fast each is", badInput}
	}
	if errors.Is(err, sim.ErrStopped) || errors.Is(err, scenarios.ErrNothingYet) {
		return &complaint{errors.New("interrupted before anything was known"), "run it again", failed}
	}
	if fault, ok := errors.AsType[*sim.Fault](err); ok && !errors.Is(err, sim.ErrEndless) {
		return defect(fault.Value, fault.Stack)
	}
	if _, ok := errors.AsType[*stations.StuckError](err); ok {
		return &complaint{err, "give one of these stations room, or cartons, to go on with", badInput}
	}
	return &complaint{err, "dwellcast check shows what the line is", failed}
}

// verdict is what the exit status tells of a forecast that was made.
func verdict(f *scenarios.Forecast, o scenarios.Options) error {
	switch {
	case f.Interrupted:
		return &complaint{fmt.Errorf("interrupted after %s", f.Counted()),
			"the figures rest on those alone", failed}
	case o.Precision > 0 && !(f.GoodRate.HalfWidth() <= o.Precision*f.GoodRate.Mean):
		hint := "ask for a wider one, or for a longer shift"
		if f.Steady != nil {
			hint = "ask for a wider one, or for a longer run"
		}
		return &complaint{fmt.Errorf("the wanted precision of %s was not reached in %s", quantity.FormatRatio(o.Precision), f.Counted()), hint, notMet}
	}
	return nil
}
