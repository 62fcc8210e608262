package reports

import (
	"fmt"
	"io"
	"math"
	"time"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/acceptance"
)

// Acceptance is a plan of an acceptance run, or what a run has shown.
type Acceptance struct {
	Origin Origin
	// Between is the mean time between stops; Promise, Refuse and the risks are as asked for, shares of 1.
	Between               time.Duration
	Promise, Refuse       float64
	SellerRisk, BuyerRisk float64
	// Plan is the run spoken of, Needed the shortest that keeps the risks; Normal is that by the textbook's formula.
	Plan, Needed *acceptance.Plan
	Normal       acceptance.Plan
	// Shown is what a run that was made tells; nil for a plan.
	Shown *ShownRun
}

// ShownRun is a run that was made, with what it says of the machine.
type ShownRun struct {
	Stops        int
	Up, Down     time.Duration
	Confidence   float64
	Availability interval
	// LeastBetween is the lower bound of the mean time between stops, one-sided.
	LeastBetween time.Duration
}

const acceptanceCaution = "Caution: an acceptance run is no safety validation. Before anyone reaches into a machine during it, stop it, isolate and lock out every " +
	"source of energy, as local codes and the maker's manual require."

// Accept writes an acceptance plan or verdict. Style matters to the table format only.
func Accept(w io.Writer, a *Acceptance, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return acceptPage(a) },
		json:   func() error { return acceptJSON(w, a) },
		charts: func() []chart.Chart { return []chart.Chart{AcceptChart(a)} },
	}.write(w, format, style)
}

func acceptPage(a *Acceptance) *layout.Page {
	p := &layout.Page{Title: "Acceptance run"}
	if a.Shown != nil {
		p.Add(layout.Section{Answer: true, Text: shownWords(a.Shown)})
	} else {
		p.Add(layout.Section{Answer: true, Text: planWords(a)})
		p.Add(characteristic(a))
	}
	p.Add(layout.Section{Heading: "Notes", Notes: []string{
		"Settle in the contract what is measured: which stops count, whose fault they are (own, upstream, material), what is planned time, and what starts the clock anew.",
		"Times between stops and times to clear them are taken as exponential and independent, the machine as running at first (Takacs 1957). Of a real line, whose cartons come in " +
			"bursts, a run tells less.",
		"Repeat it: " + a.Origin.Line, acceptanceCaution}})
	return p
}

func planWords(a *Acceptance) []string {
	plan := a.Plan
	words := []string{}
	if plan != a.Needed {
		words = append(words, fmt.Sprintf("A run of %s passed from %s up: a machine as promised (%s) fails it with %s, one to be refused (%s) passes it with %s", hours(plan.Length),
			share4(plan.Line), share4(a.Promise), share4(plan.Seller), share4(a.Refuse), share4(plan.Buyer)))
		if plan.Seller > a.SellerRisk+1e-4 || plan.Buyer > a.BuyerRisk+1e-4 {
			words = append(words, fmt.Sprintf("It can't tell %s from %s with risks of %s and %s", share4(a.Promise), share4(a.Refuse), share4(a.SellerRisk), share4(a.BuyerRisk)))
		}
	}
	words = append(words, fmt.Sprintf("Run for %s, and pass from %s of the time up: a machine as promised (%s) then fails with %s, one to be refused (%s) passes with %s", hours(a.Needed.Length),
		share4(a.Needed.Line), share4(a.Promise), share4(a.Needed.Seller), share4(a.Refuse), share4(a.Needed.Buyer)))
	return append(words, fmt.Sprintf("The textbook's normal approximation would ask for %s with a line of %s, whose true risks are %s and %s", hours(a.Normal.Length), share4(a.Normal.Line),
		share4(a.Normal.Seller), share4(a.Normal.Buyer)))
}

func shownWords(s *ShownRun) []string {
	stops := quantity.FormatCount(int64(s.Stops), "stop")
	words := []string{}
	if s.Availability.Assessed() {
		words = append(words, fmt.Sprintf("Up %s of the time (%s interval %s to %s), by %s", share4(s.Availability.Mean), layout.Confidence(s.Confidence), share4(s.Availability.Low),
			share4(s.Availability.High), stops))
	} else {
		words = append(words, "Without a stop the run says nothing of the availability (~), only of the time between stops")
	}
	return append(words, fmt.Sprintf("The mean time between stops is at least %s, at %s one-sided", lengthOf(s.LeastBetween), layout.Confidence(s.Confidence)))
}

// characteristic is the operating characteristic: how surely a machine of a given availability passes.
func characteristic(a *Acceptance) layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Figures("true share\nof time up", "availability"), layout.Figures("passes", "pass")}}
	for _, point := range operating(a) {
		t.Add(layout.Percent(interval{Mean: point.True, Low: math.NaN(), High: math.NaN()}), layout.Percent(interval{Mean: point.Pass, Low: math.NaN(), High: math.NaN()}))
	}
	return layout.Section{Key: "operating_characteristic", Heading: "How surely a machine passes, %", Table: t}
}

type operatingPoint struct {
	True float64 `json:"true"`
	Pass float64 `json:"pass"`
}

// operating are points of the operating characteristic about the two availabilities, which are among them.
func operating(a *Acceptance) []operatingPoint {
	var points []operatingPoint
	step := (a.Promise - a.Refuse) / 2
	for k := -2; k <= 4; k++ {
		if x := a.Refuse + float64(k)*step; x > 0 && x < 1-1e-9 {
			points = append(points, operatingPoint{layout.Portable(x), layout.Portable(acceptance.WithAvailability(a.Between, x).Pass(a.Plan.Length, a.Plan.Line))})
		}
	}
	return points
}

func hours(d time.Duration) string { return layout.Fixed(d.Hours(), 2) + " h" }

// share4 prints a share in percent, to a hundredth.
func share4(x float64) string { return layout.Exactly(math.Round(1e4*x)/100) + " %" }

type jsonAcceptance struct {
	Schema       int              `json:"schema"`
	CommandLine  string           `json:"command_line"`
	Hours        *number          `json:"hours,omitempty"`
	PassLine     *number          `json:"pass_line,omitempty"`
	Seller       *number          `json:"seller_risk,omitempty"`
	Buyer        *number          `json:"buyer_risk,omitempty"`
	NeededHours  *number          `json:"needed_hours,omitempty"`
	NormalHours  *number          `json:"normal_hours,omitempty"`
	NormalLine   *number          `json:"normal_pass_line,omitempty"`
	OC           []operatingPoint `json:"oc,omitempty"`
	Availability *jsonInterval    `json:"availability,omitempty"`
	LeastBetween *number          `json:"least_mtbf_hours,omitempty"`
	Caution      string           `json:"caution"`
}

func acceptJSON(w io.Writer, a *Acceptance) error {
	out := jsonAcceptance{Schema: 1, CommandLine: a.Origin.Line, Caution: acceptanceCaution}
	if s := a.Shown; s != nil {
		out.Availability, out.LeastBetween = pointer(jsonOf(s.Availability)), pointer(number(s.LeastBetween.Hours()))
		return writeJSON(w, out)
	}
	out.Hours, out.PassLine = pointer(number(a.Plan.Length.Hours())), pointer(number(a.Plan.Line))
	out.Seller, out.Buyer = pointer(number(a.Plan.Seller)), pointer(number(a.Plan.Buyer))
	out.NeededHours, out.NormalHours, out.NormalLine = pointer(number(a.Needed.Length.Hours())), pointer(number(a.Normal.Length.Hours())), pointer(number(a.Normal.Line))
	out.OC = operating(a)
	return writeJSON(w, out)
}
