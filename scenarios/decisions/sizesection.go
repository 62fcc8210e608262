package decisions

import (
	"errors"
	"time"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
)

// SizeSection reads the section size: of a study.
//
//	size:
//	  demand: 5000000 cartons/year
//	  chance: 90 %
//	  sells: demand
//	  discount: 10 %
//	  calendar: {days: 250, shifts: 2, breaks: 30 min, cleaning: 187 h, changeovers: {number: 300, takes: 30 min}}
//	  attendant: 30 money/h
//	  candidates:
//	    - {name: as it is, operating: 60000 money/year}
//	    - {name: second robot, changes: {robot.units: 2}, price: 120000 money, life: 10 years}
func SizeSection(spec *SizeSpec) scenarios.SectionReader {
	return func(n *document.Node, s *scenarios.Study, p *document.Problems) {
		r := &sizeReader{study: s, p: p, spec: spec}
		*spec = SizeSpec{Replications: spec.Replications, Confidence: spec.Confidence, AsSet: spec.AsSet, Progress: spec.Progress}
		r.read(n)
	}
}

// sizeReader reads the section; it goes on after a mistake, so that all of them are found at once.
type sizeReader struct {
	study *scenarios.Study
	p     *document.Problems
	spec  *SizeSpec
	// common is what holds for every candidate that says nothing else.
	common SizeCandidate
}

func (r *sizeReader) read(n *document.Node) {
	f := n.Map(r.p)
	if f.Node() == nil {
		return
	}
	if currency := f.Take("currency"); currency != nil {
		r.spec.Currency = currency.Text(r.p)
	}
	r.readDemand(f.Require("demand", "5000000 cartons/year"))
	if chance := f.Take("chance"); chance != nil {
		r.spec.Chance = chance.Ratio(r.p, document.Limit{Above: "0 %"}, document.Limit{Below: "100 %", Hint: "write less than 100 %; nothing is certain"})
	}
	if sells := f.Take("sells"); sells != nil {
		r.spec.SellsAll = sells.OneOf(r.p, "all", "demand") == "all"
	}
	r.spec.Discount = f.Take("discount").Ratio(r.p)
	if replications := f.Take("shifts"); replications != nil {
		count := replications.Count(r.p, document.Limit{Min: "2"}, document.Limit{Max: "100000"})
		if r.spec.Replications == 0 { // the command line comes first
			r.spec.Replications = count
		}
	}
	r.spec.Calendar = r.calendar(f.Require("calendar", "{days: 250, shifts: 2}"))
	r.common = SizeCandidate{Lines: 1, Calendar: r.spec.Calendar}
	r.readCommon(f, &r.common)
	candidates := f.Require("candidates", "[{name: as it is}]")
	against := f.Take("against")
	f.Done()
	r.readCandidates(candidates)
	r.readAgainst(against)
}

// readCommon reads what may stand in the section, for all candidates, and in a candidate.
func (r *sizeReader) readCommon(f *document.Fields, c *SizeCandidate) {
	none := document.Limit{Min: "0 money/h"}
	if n := f.Take("attendant"); n != nil {
		c.AttendantHour = r.money(n, quantity.MoneyPerTime, "money/h", none)
	}
	perCarton := document.Limit{Min: "0 money/carton"}
	if n := f.Take("waste"); n != nil {
		c.Waste = r.money(n, quantity.MoneyPerCount, "money/carton", perCarton)
	}
	if n := f.Take("contribution"); n != nil {
		c.Contribution, c.Sells = r.money(n, quantity.MoneyPerCount, "money/carton", document.Limit{Min: "0 money/carton",
			Hint: "a carton that costs more than it brings is not worth a line; write what it sells for less its own materials"}), true
	}
	if n := f.Take("ramp_up"); n != nil {
		c.RampUp = r.rampUp(n)
	}
}

// readDemand reads good cartons a year: a number, with low, likely and high a triangular law, or a law.
func (r *sizeReader) readDemand(n *document.Node) {
	if n == nil {
		return
	}
	inner := n.Assumed(r.p)
	var law random.Distribution
	var err error
	if inner.Kind() == document.Map {
		law = scenarios.ReadLaw(inner, quantity.Count, r.p)
	} else {
		law, err = r.numberOrTriangle(n, inner)
	}
	switch {
	case err != nil:
		r.p.Add(n, "is no demand: "+err.Error(), "write 5000000 cartons/year")
	case law != nil && !(law.Mean() > 0):
		r.p.Add(inner, "leaves no demand", "write more than 0")
	case law != nil:
		r.spec.Demand = NewDemand(law)
	}
}

// numberOrTriangle reads {low, likely, high}, or one number.
func (r *sizeReader) numberOrTriangle(n, inner *document.Node) (random.Distribution, error) {
	before := r.p.Len()
	likely := r.cartons(n, inner)
	if r.p.Len() > before || likely == 0 {
		return nil, nil
	}
	low, high := likely, likely
	if n.IsAssumption() {
		f := n.Map(r.p)
		if end := f.Take("low"); end != nil {
			low = r.cartons(end, end)
		}
		if end := f.Take("high"); end != nil {
			high = r.cartons(end, end)
		}
	}
	if low == high {
		return random.Constant(likely)
	}
	return random.Triangular(low, likely, high)
}

// cartons reads cartons a year, which may be written with or without the year.
func (r *sizeReader) cartons(n, inner *document.Node) float64 {
	above := document.Limit{Above: "0 cartons/year", Max: "1000000000000 cartons/year"}
	switch q, err := quantity.Parse(inner.Raw()); {
	case err == nil && q.Is(quantity.Count):
		return n.Measure(r.p, quantity.Count, "cartons", document.Limit{Above: "0 cartons", Max: "1000000000000 cartons"})
	case err != nil || !q.Is(quantity.Rate):
		r.p.Add(inner, "is no number of cartons a year", "write for example 5000000 cartons/year")
		return 0
	}
	return n.Measure(r.p, quantity.Rate, "cartons/year", above)
}

// money reads an amount in money, money/year, money/h or money/carton.
func (r *sizeReader) money(n *document.Node, want quantity.Dimension, unit string, limits ...document.Limit) float64 {
	if n == nil {
		return 0
	}
	inner := n.Assumed(r.p)
	_, err := quantity.Parse(inner.Raw())
	if wrong, ok := errors.AsType[*quantity.Error](err); ok && wrong.Kind == quantity.UnknownUnit {
		r.p.Add(inner, "has an unknown unit", "write "+want.Example()+"; a word for the currency goes behind currency: and is only printed")
		return 0
	}
	return n.Measure(r.p, want, unit, limits...)
}

func (r *sizeReader) calendar(n *document.Node) Calendar {
	f := n.Map(r.p)
	var c Calendar
	c.Days = f.Require("days", "250").Count(r.p, document.Limit{Min: "1"}, document.Limit{Max: "366", Hint: "a year has 366 days at the most"})
	c.Shifts = r.shifts(f.Require("shifts", "2"))
	c.Breaks = f.Take("breaks").Duration(r.p, document.Limit{Max: "24 h"})
	c.Cleaning = r.yearly(f.Take("cleaning"))
	c.Changeovers = r.yearly(f.Take("changeovers"))
	f.Done()
	return c
}

func (r *sizeReader) shifts(n *document.Node) int {
	return n.Count(r.p, document.Limit{Min: "1"}, document.Limit{Max: "24", Hint: "write how many shifts a day has, such as 2"})
}

// yearly reads a time a year, or how often a year something takes how long.
func (r *sizeReader) yearly(n *document.Node) time.Duration {
	if n == nil || n.Kind() == document.Scalar || n.IsAssumption() {
		return n.Duration(r.p, document.Limit{Max: "8784 h"})
	}
	f := n.Map(r.p)
	number := f.Require("number", "300").Count(r.p, document.Limit{Max: "100000"})
	takes := f.Require("takes", "30 min").Duration(r.p, document.Limit{Max: "24 h"})
	f.Done()
	return time.Duration(number) * takes
}

func (r *sizeReader) rampUp(n *document.Node) RampUp {
	f := n.Map(r.p)
	takes := f.Require("takes", "90 days").Measure(r.p, quantity.Time, "years", document.Limit{Min: "0 s"}, document.Limit{Max: "10 years"})
	from := f.Require("from", "50 %").Ratio(r.p)
	f.Done()
	return RampUp{takes, from}
}
