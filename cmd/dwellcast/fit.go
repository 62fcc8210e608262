package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/lifedata"
)

// fitFlags are the flags of the fit command.
type fitFlags struct {
	outputFlags
	pictureFlag
	durations, unit, confidence string
}

// fitCommand fits distributions to times.
func (p *program) fitCommand() *cobra.Command {
	var flags fitFlags
	cmd := &cobra.Command{
		Use:   "fit --durations FILE --unit UNIT",
		Short: "Fit distributions to times between stops or to clear them, those that were cut off counted",
		Long: "fit reads a file of times with the head time,event: event 1 for a time that ended, 0 for one that was cut off, as by the end of a " +
			"shift. It fits every distribution by maximum likelihood, the cut-off times counted for as long as they were seen to last, and orders " +
			"them by Akaike's criterion.\n" +
			"Exit status 3: no time ended, or all ended alike, so that no distribution can be told.",
		Example: "  dwellcast fit --durations stops.csv --unit min",
		Args:    noArguments,
		RunE:    func(cmd *cobra.Command, _ []string) error { return p.fit(cmd, &flags) },
	}
	set := cmd.Flags()
	set.StringVar(&flags.durations, "durations", "", "`file` of times, head time,event; - is standard input")
	set.StringVar(&flags.unit, "unit", "", "`unit` of the times: s, min or h")
	set.StringVar(&flags.confidence, "confidence", "95%", "`share` of confidence of all intervals")
	flags.outputFlags.add(set)
	flags.pictureFlag.add(set)
	return cmd
}

func (p *program) fit(cmd *cobra.Command, f *fitFlags) error {
	out, err := f.open()
	if err != nil {
		return err
	}
	picture, err := newPicture(f.chart)
	if err != nil {
		return err
	}
	if f.durations == "" {
		return usage("write --durations FILE --unit min", "fit needs a file of times")
	}
	seconds, err := secondsOf(f.unit)
	if err != nil {
		return err
	}
	level, err := share("--confidence", f.confidence, 0.5, 0.9999)
	if err != nil {
		return err
	}
	sample, err := p.readDurations(f.durations, seconds)
	if err != nil {
		return err
	}
	fits, err := lifedata.FitAll(sample, level)
	if err != nil {
		return &complaint{fmt.Errorf("%s: %w", f.durations, err), "no distribution can be told from these times", notMet}
	}
	answer := &reports.Fits{Origin: originOf(cmd, ""), File: f.durations, Unit: f.unit, UnitSeconds: seconds, Sample: sample, Laws: fits, Confidence: level}
	if err := picture.draw(func() drawer { return reports.FitChart(answer) }); err != nil {
		return err
	}
	return p.send(out, func(w io.Writer, style reports.Style) error { return reports.Fit(w, answer, out.format, style) })
}

// secondsOf is how many seconds a unit of time has.
func secondsOf(unit string) (float64, error) {
	if unit == "" {
		return 0, usage("write --unit s, --unit min or --unit h", "the unit of the times is missing")
	}
	q, err := quantity.Of(1, unit)
	if err == nil && q.Is(quantity.Time) {
		return q.SI(), nil
	}
	return 0, usage("write --unit s, --unit min or --unit h", "--unit %s is no unit of time", unit)
}

// readDurations reads times with their events, in seconds. Every row that can't be read is named.
func (p *program) readDurations(path string, unit float64) ([]lifedata.Time, error) {
	in := p.stdin
	if path != "-" {
		file, err := os.Open(path)
		if err != nil {
			return nil, usage("check the name and the folder", "can't read %s: %w", path, plain(err))
		}
		defer func() { _ = file.Close() }() // only read from
		in = file
	}
	rows := csv.NewReader(in)
	rows.ReuseRecord, rows.FieldsPerRecord, rows.TrimLeadingSpace = true, -1, true
	var sample []lifedata.Time
	var wrong []string
	for row := 1; ; row++ {
		record, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, usage("write time,event in each row", "%s: %w", path, err)
		}
		if row == 1 && isHead(record) {
			continue
		}
		t, why := durationOf(record)
		if why != "" {
			wrong = append(wrong, fmt.Sprintf("%s:%d: %s", path, row, why))
			continue
		}
		sample = append(sample, lifedata.Time{Length: t.Length * unit, Ended: t.Ended})
	}
	if len(wrong) > 0 {
		more := ""
		if n := len(wrong) - mostWrong; n > 0 {
			wrong, more = wrong[:mostWrong], fmt.Sprintf("\nand %d rows more", n)
		}
		return nil, usage("write a time above 0 and 1 or 0, such as 12.5,1", "%s%s", strings.Join(wrong, "\n"), more)
	}
	return sample, nil
}

// mostWrong is how many wrong rows are named.
const mostWrong = 20

// isHead says that a first row is heads rather than a time.
func isHead(record []string) bool {
	_, err := strconv.ParseFloat(record[0], 64)
	return err != nil
}

// durationOf reads one row, or says what is wrong with it.
func durationOf(record []string) (t lifedata.Time, why string) {
	if len(record) != 2 {
		return t, fmt.Sprintf("has %s where time,event is wanted", quantity.FormatCount(int64(len(record)), "field"))
	}
	x, err := strconv.ParseFloat(record[0], 64)
	switch {
	case err != nil:
		return t, fmt.Sprintf("%q is no number", record[0])
	case !(x > 0) || x > 1e15:
		return t, fmt.Sprintf("a time of %s is not above 0", record[0])
	}
	switch record[1] {
	case "1":
		return lifedata.Time{Length: x, Ended: true}, ""
	case "0":
		return lifedata.Time{Length: x}, ""
	}
	return t, fmt.Sprintf("event %q is neither 1 nor 0", record[1])
}
