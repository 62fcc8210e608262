package decisions

import (
	"fmt"
	"math"
	"strconv"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// mostCandidates is how many lines one study chooses from.
const mostCandidates = 100

func (r *sizeReader) readCandidates(n *document.Node) {
	if n == nil {
		return
	}
	items := n.List(r.p)
	if n.Kind() == document.List && len(items) == 0 {
		r.p.Add(n, "holds no candidates", "write one at least, such as - {name: as it is}")
	}
	if len(items) > mostCandidates {
		r.p.Add(n, fmt.Sprintf("holds %d candidates", len(items)), fmt.Sprintf("take %d at the most", mostCandidates))
		return
	}
	names := map[string]document.Position{}
	for _, item := range items {
		f := item.Map(r.p)
		if f.Node() == nil {
			continue
		}
		name := f.Require("name", "second robot")
		c := r.candidate(item, name, f)
		if at, known := names[c.Name]; known && c.Name != "" {
			r.p.Add(name, "is the name of two candidates", "give each its own; the first is at "+at.String())
		}
		names[c.Name] = item.At()
		r.spec.Candidates = append(r.spec.Candidates, c)
	}
}

// candidate reads a line that could be had, and what it costs.
func (r *sizeReader) candidate(item, name *document.Node, f *document.Fields) SizeCandidate {
	c := r.common
	c.Name = name.Text(r.p)
	if len([]rune(c.Name)) > 40 {
		r.p.Add(name, "is a long name", "a name has 40 letters at most")
	}
	c.Changes, c.File = r.line(name, f)
	if n := f.Take("lines"); n != nil {
		c.Lines = max(1, n.Count(r.p, document.Limit{Min: "1"}, document.Limit{Max: "100"}))
	}
	if n := f.Take("shifts"); n != nil {
		c.Calendar.Shifts = r.shifts(n)
	}
	r.readCommon(f, &c)
	r.readMoney(item, f, &c)
	r.readAttendants(item, f.Take("attendants"), &c)
	f.Done()
	r.checkTime(item, &c)
	return c
}

// line reads which line a candidate is: another file, a case of the study, changes, or the study's line as it is.
func (r *sizeReader) line(name *document.Node, f *document.Fields) ([]string, *scenarios.File) {
	line, known, changes := f.Take("line"), f.Take("case"), f.Take("changes")
	given := 0
	for _, n := range []*document.Node{line, known, changes} {
		if n != nil {
			given++
		}
	}
	switch {
	case given > 1:
		r.p.Add(f.Node(), "says twice which line it is", "keep one of line, case and changes")
	case line != nil:
		return []string{"line = " + line.Raw()}, r.study.Other(line, r.p)
	case known != nil:
		return r.caseOf(known)
	case changes != nil && name != nil:
		if c := r.study.Changed(name, changes, r.p); c != nil {
			return c.Changes, c.File
		}
	case given == 0:
		return nil, r.study.Line
	}
	return nil, nil
}

func (r *sizeReader) caseOf(n *document.Node) ([]string, *scenarios.File) {
	var names []string
	for _, c := range r.study.Cases {
		if c.Name == n.Raw() {
			return c.Changes, c.File
		}
		names = append(names, c.Name)
	}
	hint := "write the name of one under cases:, or changes: {sealer.dwell: 1.1 s}"
	if near := quantity.Nearest(n.Raw(), names); near != "" {
		hint = "did you mean " + near + "?"
	}
	r.p.Add(n, "is no case of the study", hint)
	return nil, nil
}

// readMoney reads price, life, salvage and operating cost.
func (r *sizeReader) readMoney(item *document.Node, f *document.Fields, c *SizeCandidate) {
	c.Price = r.money(f.Take("price"), quantity.Money, "money", document.Limit{Min: "0 money", Hint: "a price is 0 or more; what comes in at the end is salvage"})
	c.Operating = r.money(f.Take("operating"), quantity.MoneyPerTime, "money/year", document.Limit{Min: "0 money/year",
		Hint: "write what it costs a year; a saving shows against another candidate"})
	salvage := f.Take("salvage")
	if salvage != nil {
		c.Salvage = r.money(salvage, quantity.Money, "money")
		if c.Salvage > c.Price && c.Price > 0 {
			r.p.Add(salvage.Assumed(r.p), "is more than the price", "salvage is what is left of the price at the end of the life")
		}
	}
	life := f.Take("life")
	c.Life = 1
	switch {
	case life != nil:
		years := life.Measure(r.p, quantity.Time, "years", document.Limit{Min: "1 years"}, document.Limit{Max: "100 years"})
		if c.Life = max(1, int(math.Round(years))); math.Abs(years-float64(c.Life)) > 1e-9*years && years > 0 {
			r.p.Add(life.Assumed(r.p), "is no whole number of years", "write "+strconv.Itoa(c.Life)+" years")
		}
	case c.Price > 0 || salvage != nil:
		r.p.Report(document.Problem{At: item.At(), Path: item.Path(), Text: "life", Message: "is missing", Hint: "a price is spread over it; add life: 10 years"})
	}
}

// readAttendants reads how many are paid for; by default as many as the line has.
func (r *sizeReader) readAttendants(item, n *document.Node, c *SizeCandidate) {
	switch {
	case n != nil:
		c.Attendants = n.Number(r.p, document.Limit{Min: "0"}, document.Limit{Max: "1000"})
	case c.File != nil && c.File.Line.Crew.Attendants > 0:
		c.Attendants = float64(c.File.Line.Crew.Attendants)
	case c.File != nil && c.AttendantHour > 0:
		r.p.Report(document.Problem{At: item.At(), Path: item.Path(), Text: "attendants", Message: "is missing, and the line has a crew without limit",
			Hint: "say how many are paid for: attendants: 1"})
	default:
		c.Attendants = 0
	}
}

// checkTime reports a calendar that does not fit the candidate's shift.
func (r *sizeReader) checkTime(item *document.Node, c *SizeCandidate) {
	if c.File == nil || c.Calendar.Days == 0 || c.Calendar.Shifts == 0 {
		return
	}
	shift := c.File.Shiftwise().Line.Shift
	switch {
	case float64(c.Calendar.Shifts)*shift.Length.Hours() > 24:
		r.p.Add(item, fmt.Sprintf("would run %d shifts of %s a day", c.Calendar.Shifts, quantity.FormatDuration(shift.Length)),
			"a day has 24 h; write fewer shifts, or shorten shift.length in the line")
	case c.Calendar.Net(shift) <= 0:
		r.p.Add(item, "is left no time to run by breaks, cleaning and changeovers", "take less off, or schedule more days or shifts")
	}
}

// readAgainst reads which candidate is what one has.
func (r *sizeReader) readAgainst(n *document.Node) {
	if n == nil {
		return
	}
	var names []string
	for _, c := range r.spec.Candidates {
		names = append(names, c.Name)
		if c.Name != n.Raw() {
			continue
		}
		if c.Price != 0 || c.Salvage != 0 {
			r.p.Add(n, "has a price, though it is what the others are held against", "what one has is paid; leave out its price and salvage")
		}
		r.spec.Against = c.Name
		return
	}
	hint := "write the name of the candidate that is there already"
	if near := quantity.Nearest(n.Raw(), names); near != "" {
		hint = "did you mean " + near + "?"
	}
	r.p.Add(n, "is no candidate", hint)
}
