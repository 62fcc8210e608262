package main

import (
	"errors"
	"io"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/acceptance"
)

// acceptFlags are the flags of the accept command.
type acceptFlags struct {
	outputFlags
	pictureFlag
	mtbf, length                          string
	promise, refuse, line, risks          string
	sellers, buyers, up, down, confidence string
	stops                                 int
}

// acceptCommand plans an acceptance run from figures, or judges one that was made.
func (p *program) acceptCommand() *cobra.Command {
	var flags acceptFlags
	cmd := &cobra.Command{
		Use:   "accept --mtbf TIME --promise SHARE --refuse SHARE",
		Short: "Plan an acceptance run: how long, and from which availability it is passed",
		Long: "accept says how long an acceptance run must last so that a machine as promised fails it, and one to be refused passes it, with " +
			"no more than the risks wanted; and what a run of a given length tells. Times between stops and times to clear them are taken as " +
			"exponential, the machine as running at first. With --stops, --up and --down it says what a run that was made has shown.\n" +
			"Exit status 3: the run given, or any of up to a year, does not keep the risks.",
		Example: "  dwellcast accept --mtbf 20min --promise 92% --refuse 88% --risks 10%\n" +
			"  dwellcast accept --mtbf 20min --promise 92% --refuse 88% --length 8h --line 90%\n" +
			"  dwellcast accept --stops 10 --up 9990h --down 10h",
		Args: noArguments,
		RunE: func(cmd *cobra.Command, _ []string) error { return p.accept(cmd, &flags) },
	}
	set := cmd.Flags()
	set.StringVar(&flags.mtbf, "mtbf", "", "mean `time` between stops, running time, such as 20min")
	set.StringVar(&flags.promise, "promise", "", "`share` of time up that is promised, such as 92%")
	set.StringVar(&flags.refuse, "refuse", "", "`share` of time up that is to be refused, such as 88%")
	set.StringVar(&flags.risks, "risks", "10%", "`share`: the most risk of either side")
	set.StringVar(&flags.sellers, "seller-risk", "", "`share`: the seller's risk, where it is not --risks")
	set.StringVar(&flags.buyers, "buyer-risk", "", "`share`: the buyer's risk, where it is not --risks")
	set.StringVar(&flags.length, "length", "", "`time` of a run whose risks are wanted; with --line")
	set.StringVar(&flags.line, "line", "", "`share` of time up from which it is passed")
	set.IntVar(&flags.stops, "stops", 0, "`number` of stops of a run that was made")
	set.StringVar(&flags.up, "up", "", "`time` that it ran")
	set.StringVar(&flags.down, "down", "", "`time` that it stood for these stops")
	set.StringVar(&flags.confidence, "confidence", "95%", "`share` of confidence of what it has shown")
	flags.outputFlags.add(set)
	flags.pictureFlag.add(set)
	return cmd
}

func (p *program) accept(cmd *cobra.Command, f *acceptFlags) error {
	out, err := f.open()
	if err != nil {
		return err
	}
	picture, err := newPicture(f.chart)
	if err != nil {
		return err
	}
	answer := &reports.Acceptance{Origin: originOf(cmd, "")}
	if cmd.Flags().Changed("stops") || f.up != "" || f.down != "" {
		err = f.shown(answer)
	} else {
		err = f.plan(answer)
	}
	if err != nil {
		return err
	}
	if err := picture.draw(func() drawer { return reports.AcceptChart(answer) }); err != nil {
		return err
	}
	if err := p.send(out, func(w io.Writer, style reports.Style) error { return reports.Accept(w, answer, out.format, style) }); err != nil {
		return err
	}
	if plan := answer.Plan; plan != nil && (plan.Seller > answer.SellerRisk+riskRounding || plan.Buyer > answer.BuyerRisk+riskRounding) {
		return &complaint{errors.New("this run does not keep the risks wanted"), "the report says which length does", notMet}
	}
	return nil
}

// riskRounding is by how much the risks of a plan that was found may be over the wanted ones.
const riskRounding = 1e-4

// plan finds the run that keeps the risks, or says what a given one does.
func (f *acceptFlags) plan(a *reports.Acceptance) error {
	var err error
	if f.mtbf == "" || f.promise == "" || f.refuse == "" {
		return usage("write --mtbf 20min --promise 92% --refuse 88%", "a plan needs the time between stops and both availabilities")
	}
	if a.Between, err = span("--mtbf", f.mtbf); err != nil {
		return err
	}
	for _, flag := range []struct {
		name, text, other string
		to                *float64
	}{{"--promise", f.promise, "", &a.Promise}, {"--refuse", f.refuse, "", &a.Refuse}, {"--seller-risk", f.sellers, f.risks, &a.SellerRisk}, {"--buyer-risk", f.buyers, f.risks, &a.BuyerRisk}} {
		text := flag.text
		if text == "" {
			text = flag.other
		}
		if *flag.to, err = part(flag.name, text); err != nil {
			return err
		}
	}
	if a.Refuse >= a.Promise {
		return usage("promise more than what is refused", "--promise %s is not above --refuse %s", f.promise, f.refuse)
	}
	found, err := acceptance.FindPlan(a.Between, a.Promise, a.Refuse, a.SellerRisk, a.BuyerRisk)
	if err != nil {
		return &complaint{err, "widen the gap between the two, or allow more risk", notMet}
	}
	a.Needed, a.Plan = &found, &found
	a.Normal = acceptance.NormalPlan(a.Between, a.Promise, a.Refuse, a.SellerRisk, a.BuyerRisk)
	if f.length == "" && f.line == "" {
		return nil
	}
	return f.given(a)
}

// given judges a run of a given length and pass line; one of them may be left to the plan.
func (f *acceptFlags) given(a *reports.Acceptance) error {
	given, err := *a.Needed, error(nil)
	if f.length != "" {
		if given.Length, err = span("--length", f.length); err != nil {
			return err
		}
		given.Line = acceptance.LineFor(a.Between, a.Promise, given.Length, a.SellerRisk)
	}
	if f.line != "" {
		if given.Line, err = part("--line", f.line); err != nil {
			return err
		}
	}
	given.Seller = 1 - acceptance.WithAvailability(a.Between, a.Promise).Pass(given.Length, given.Line)
	given.Buyer = acceptance.WithAvailability(a.Between, a.Refuse).Pass(given.Length, given.Line)
	a.Plan = &given
	return nil
}

// shown says what a run that was made tells.
func (f *acceptFlags) shown(a *reports.Acceptance) error {
	up, err := span("--up", f.up)
	if err != nil {
		return err
	}
	var down time.Duration
	if f.stops > 0 {
		if down, err = span("--down", f.down); err != nil {
			return err
		}
	}
	level, err := part("--confidence", f.confidence)
	if err != nil {
		return err
	}
	if f.stops < 0 {
		return usage("give 0 or more", "--stops is %d", f.stops)
	}
	a.Shown = &reports.ShownRun{Stops: f.stops, Up: up, Down: down, Confidence: level, Availability: acceptance.ShownAvailability(f.stops, up, down, level),
		LeastBetween: acceptance.LeastBetweenStops(up, f.stops, level)}
	return nil
}

// span reads a flag that is a time above 0.
func span(flag, text string) (time.Duration, error) {
	if text == "" {
		return 0, usage("add "+flag+" 8h", "%s is missing", flag)
	}
	q, err := quantity.ParseAs(text, quantity.Time)
	if err != nil {
		return 0, usage("write it like 8h", "%s: %w", flag, err)
	}
	d, err := q.Duration()
	if err != nil || d <= 0 {
		return 0, usage("write it like 8h", "%s is %s, and must be above 0", flag, text)
	}
	return d, nil
}

// part reads a flag that is a share between 0 and 1: 92%, or .92.
func part(flag, text string) (float64, error) {
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		if x > 0 && x < 1 {
			return x, nil
		}
		return 0, usage("write it like 92%", "%s is %s, and must lie between 0 and 1", flag, text)
	}
	return share(flag, text, 1e-6, 0.999999)
}
