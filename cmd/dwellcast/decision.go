package main

import (
	"cmp"
	"context"
	"io"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
)

// decision is a command that decides by shifts of more than one line. It brings its words, flags of its own, and a way from a file to
// a question; all such commands go the rest of the way together.
type decision[A any] struct {
	use, short, long, example string
	// shifts is how many shifts of each line are run where no number is given, in words.
	shifts string
	// flags adds the flags of its own.
	flags func(*pflag.FlagSet)
	// ask checks the flags and reads the file; nothing is run yet.
	ask func(path string, common *studyFlags, o scenarios.Options) (*question[A], error)
	// draw makes the picture of an answer; nil where there is none.
	draw func(A, reports.Origin) drawer
}

// question is what a command wants to know of lines that were read.
type question[A any] struct {
	// rests are the documents that it rests on, beside the command line: the lines, and the study they come from.
	rests []*document.Node
	// counts is what progress counts; shifts where it is empty.
	counts string
	// answer runs the lines in a lab.
	answer func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (A, error)
	// report writes the answer.
	report func(w io.Writer, answer A, origin reports.Origin, format reports.Format, style reports.Style) error
	// verdict is what the exit status tells of an answer; nil where it tells nothing.
	verdict func(A) error
}

// command makes a decision known to the command line.
func command[A any](p *program, d decision[A]) *cobra.Command {
	var common studyFlags
	var drawn pictureFlag
	cmd := &cobra.Command{Use: d.use, Short: d.short, Long: d.long, Example: d.example, Args: oneFile}
	common.add(cmd, "`number` of shifts of each line; 0 takes "+d.shifts)
	if d.flags != nil {
		d.flags(cmd.Flags())
	}
	if d.draw != nil {
		drawn.add(cmd.Flags())
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		options, out, err := common.begin()
		if err != nil {
			return err
		}
		picture, err := newPicture(drawn.chart)
		if err != nil {
			return err
		}
		q, err := d.ask(args[0], &common, options)
		if err != nil {
			return decisionComplaint(err)
		}
		if err := apartFrom(cmd, q.files()); err != nil {
			return err
		}
		origin := originOf(cmd, args[0])
		answer, err := decide(p, cmd, &common, options, q)
		if err != nil {
			return err
		}
		if err := picture.draw(func() drawer { return d.draw(answer, origin) }); err != nil {
			return err
		}
		return deliver(p, q, answer, origin, out)
	}
	return cmd
}

// files are the files that a question was read from.
func (q *question[A]) files() []string {
	var list []string
	for _, root := range q.rests {
		list = append(list, root.At().File)
	}
	return list
}

// decide runs what a question asks for. It shows how far it has come, and keeps what was run where it is interrupted.
func decide[A any](p *program, cmd *cobra.Command, common *studyFlags, o scenarios.Options, q *question[A]) (A, error) {
	var none A
	study, err := studyText(cmd, q.rests)
	if err != nil {
		return none, err
	}
	lab, err := common.lab(study, o)
	if err != nil {
		return none, err
	}
	bar := newProgress(p.stderr, cmp.Or(q.counts, countsShifts), time.Now())
	answer, err := q.answer(cmd.Context(), lab, o.Seed, func(done, total int) { bar.tell(done, total, time.Now()) })
	bar.end()
	if err != nil {
		return none, p.ended(cmd, common, lab, err)
	}
	return answer, nil
}

// deliver writes the report of an answer, and says what the exit status will.
func deliver[A any](p *program, q *question[A], answer A, origin reports.Origin, out output) error {
	if err := p.send(out, func(w io.Writer, style reports.Style) error { return q.report(w, answer, origin, out.format, style) }); err != nil {
		return err
	}
	if q.verdict == nil {
		return nil
	}
	return q.verdict(answer)
}
