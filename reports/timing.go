package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// Timing writes the timing of a line: the ceiling first, then the chart, the budget, margins, peaks and what else its file
// describes. Style matters to the table format only.
func Timing(w io.Writer, t *scenarios.Timing, format Format, style Style) error {
	return report{
		page:   func(style Style) *layout.Page { return timingPage(t, style) },
		json:   func() error { return timingJSON(w, t) },
		charts: func() []chart.Chart { return timingCharts(t) },
	}.write(w, format, style)
}

// timingCaution stands at the foot of every timing and of its chart.
const timingCaution = "Caution: servos move without warning, jaws burn, and springs, air and raised masses hold energy: guards and lockout come " +
	"before any change of a cam or a setting. A timing chart is no substitute for a risk assessment to ISO 12100, nor for local codes."

func timingPage(t *scenarios.Timing, style Style) *layout.Page {
	n := notesOf(t.Warnings)
	p := &layout.Page{Title: titleOf(t.Title)}
	p.Add(ceilingFacts(t))
	p.Add(ceilingAnswer(t))
	p.Add(ceilingSection(t, n, style))
	for i := range t.Conveyors {
		p.Add(timingPicture(t, i, style))
		p.Add(masterSection(t, i))
		p.Add(axisSection(&t.Conveyors[i]))
		p.Add(motorSection(&t.Conveyors[i]))
		p.Add(sloshSection(&t.Conveyors[i], n))
		p.Add(conveyorFacts(&t.Conveyors[i]))
		p.Add(curveTable(&t.Conveyors[i]))
	}
	p.Add(bandTable(t))
	p.Add(interlockSection(t))
	p.Add(solvedSection(t))
	for i := range t.Stations {
		p.Add(dosingSection(&t.Stations[i], n))
		p.Add(sealingSection(&t.Stations[i], n))
	}
	p.Add(layout.Section{Heading: "Notes", Notes: n.rest()})
	p.Add(layout.Section{Notes: []string{
		"Cams and drives as the file describes them; friction, weight and process forces are not in the torques. Times that are drawn are taken at their means.",
		timingCaution}})
	return p
}

// ceilingAnswer says how fast the line may be set, what binds, what would lift it and what binds next.
func ceilingAnswer(t *scenarios.Timing) layout.Section {
	c := &t.Ceiling
	binding := c.Binding()
	s := layout.Section{Answer: true}
	switch {
	case binding == nil:
		s.Text = append(s.Text, "No limit binds: nothing that the file describes keeps the line from being set faster")
		if least := c.Least(); least != nil {
			s.Text = append(s.Text, leastWords(least), settingAgainst(t))
		}
		s.Text = append(s.Text, unassessedWords(c)...)
		return s
	case c.Setting == 0 && binding.Err == nil && c.Least() != nil:
		s.Text = append(s.Text, fmt.Sprintf("No setting is allowed: %s, %s allows %s at the most", binding.Where, binding.Name, ceilingRate(binding.Highest.Setting)))
		s.Text = append(s.Text, leastWords(c.Least()), "To lift it: "+binding.Lift+"; or "+c.Least().Lift)
		return s
	case c.Setting == 0:
		s.Text = append(s.Text, fmt.Sprintf("No setting is allowed: %s, %s%s", binding.Where, binding.Name, shortBy(binding)))
		s.Text = append(s.Text, "To lift it: "+binding.Lift)
		return s
	}
	s.Text = append(s.Text, fmt.Sprintf("Ceiling %s, bound by %s: %s", ceilingRate(c.Setting), binding.Where, binding.Name))
	if least := c.Least(); least != nil {
		s.Text = append(s.Text, leastWords(least))
	}
	s.Text = append(s.Text, settingAgainst(t))
	s.Text = append(s.Text, unassessedWords(c)...)
	s.Text = append(s.Text, "To lift it: "+binding.Lift)
	if next := c.Next(); next != nil {
		s.Text = append(s.Text, fmt.Sprintf("Next to bind: %s: %s, at %s", next.Where, next.Name, ceilingRate(next.Highest.Setting)))
	}
	return append1(s, forbiddenWords(c))
}

func append1(s layout.Section, words string) layout.Section {
	if words != "" {
		s.Text = append(s.Text, words)
	}
	return s
}

// leastWords say which settings are too slow.
func leastWords(l *scenarios.LimitFinding) string {
	return fmt.Sprintf("Lowest setting %s, bound by %s: %s", quantity.FormatRate(roundedUp(l.Lowest)), l.Where, l.Name)
}

// roundedUp is a lowest setting rounded up to a tenth, so that what is printed is allowed.
func roundedUp(setting motion.CartonsPerHour) float64 {
	return math.Ceil(float64(10*setting)-1e-6) / 10
}

// shortBy says what is missing where a limit is broken whatever the setting.
func shortBy(l *scenarios.LimitFinding) string {
	if !(l.Now < 0) || math.IsInf(l.Now, 0) {
		return ""
	}
	short := *l
	short.Now = -l.Now
	return ", short by " + marginNow(&short)
}

// ceilingRate rounds a ceiling down to a tenth, so that what is printed is allowed.
func ceilingRate(setting motion.CartonsPerHour) string {
	return quantity.FormatRate(math.Floor(10*float64(setting)+0.05) / 10)
}

// settingAgainst says how the file's setting stands to the ceiling.
func settingAgainst(t *scenarios.Timing) string {
	var broken []string
	for _, l := range t.Ceiling.Limits {
		if l.Now < 0 || math.IsNaN(l.Now) {
			broken = append(broken, l.Where+": "+l.Name)
		}
	}
	setting := quantity.FormatRate(float64(t.Setting))
	switch {
	case len(broken) == 1:
		return fmt.Sprintf("The setting of %s breaks %s", setting, broken[0])
	case len(broken) > 1:
		return fmt.Sprintf("The setting of %s breaks %d limits, first %s", setting, len(broken), broken[0])
	}
	keeps := "keeps every limit"
	if len(t.Ceiling.Unassessed) > 0 {
		keeps = "keeps every limit that can be told"
	}
	if t.Ceiling.Binding() == nil {
		return fmt.Sprintf("The setting of %s %s", setting, keeps)
	}
	share := 100 * float64(t.Ceiling.Setting-t.Setting) / float64(t.Ceiling.Setting)
	if share < 0 {
		return fmt.Sprintf("The setting of %s %s, above a band that sets the ceiling", setting, keeps)
	}
	return fmt.Sprintf("The setting of %s %s, %s %% below the ceiling", setting, keeps, layout.Fixed(share, 1))
}

// unassessedWords name the limits that can't be told.
func unassessedWords(c *scenarios.SpeedCeiling) []string {
	var words []string
	for _, u := range c.Unassessed {
		words = append(words, fmt.Sprintf("Not assessed: %s of %s, since %s", u.Name, u.Where, u.Why))
	}
	return words
}

// forbiddenWords lists forbidden bands that lie below the highest of the settings looked at.
func forbiddenWords(c *scenarios.SpeedCeiling) string {
	words := ""
	for _, l := range c.Limits {
		for _, b := range l.Bands {
			if b.To >= l.To {
				continue
			}
			if words != "" {
				words += "; "
			}
			words += fmt.Sprintf("%s to %s (%s)", layout.Fixed(float64(b.From), 1), ceilingRate(b.To), l.Name)
		}
	}
	if words == "" {
		return ""
	}
	return "Forbidden bands of settings: " + words
}

// ceilingSection is the table of what each limit allows. Where there is room, it says for each what lifts it; else for the first
// few that bind, below the table.
func ceilingSection(t *scenarios.Timing, n *notes, style Style) layout.Section {
	s := layout.Section{Key: "limit", Heading: "What each limit allows"}
	lift := layout.Told("what lifts it", "lift")
	lift.Hidden = !style.Wide()
	table := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("limit"), layout.Figures("highest\nsetting", "highest_setting"),
		layout.Figures("margin\nnow", "margin"), lift}}
	for i := range t.Ceiling.Limits {
		l := &t.Ceiling.Limits[i]
		table.Add(layout.Word(l.Where), layout.Word(l.Name).Marked(n.mark("limit "+l.Where+"/"+l.Name)), highestCell(l), layout.Scaled(marginNow(l), l.Now).In(l.Unit), layout.Word(l.Lift))
	}
	for _, u := range t.Ceiling.Unassessed {
		table.Add(layout.Word(u.Where), layout.Word(u.Name), layout.Unseen(), layout.Unseen(), layout.Word(""))
	}
	s.Table, s.Notes = table, n.take()
	if !style.Wide() {
		s.Notes = append(s.Notes, liftWords(&t.Ceiling))
	}
	return s
}

// fewLifts is how many limits are explained below a narrow table.
const fewLifts = 4

// liftWords says what lifts the first limits that bind.
func liftWords(c *scenarios.SpeedCeiling) string {
	var words []string
	for i := range c.Limits {
		if l := &c.Limits[i]; len(words) < fewLifts && (l.Highest.Binds || l.Err != nil) {
			words = append(words, l.Name+": "+l.Lift)
		}
	}
	return "What lifts them: " + strings.Join(words, "; ")
}

// highestCell is the highest setting that a limit allows.
func highestCell(l *scenarios.LimitFinding) layout.Cell {
	switch {
	case l.Err != nil:
		return layout.Word("no setting")
	case l.Lowest > 0:
		return layout.Word("any from " + layout.Fixed(roundedUp(l.Lowest), 1) + "/h")
	case !l.Highest.Binds:
		return layout.Word("any")
	}
	return layout.Shown(shortRate(l.Highest.Setting), float64(l.Highest.Setting)).In("cartons/h")
}

func shortRate(setting motion.CartonsPerHour) string {
	return layout.Fixed(math.Floor(10*float64(setting)+0.05)/10, 1) + "/h"
}

// marginNow prints the margin of a limit in a unit fit to read.
func marginNow(l *scenarios.LimitFinding) string {
	if math.IsInf(l.Now, -1) {
		return "no bound"
	}
	switch l.Unit {
	case "s":
		return layout.Fixed(1000*l.Now, 0) + " ms"
	case "m":
		return lengthIn(l.Now, l.Units, 1)
	case "m/s":
		return velocityIn(l.Now, l.Units)
	case "m/s2":
		if l.Units == scenarios.US {
			return layout.Fixed(l.Now/quantity.Size("in"), 1) + " in/s2"
		}
	case "of rating":
		return layout.Fixed(100*l.Now, 0) + " %"
	}
	return layout.Fixed(l.Now, 2) + " " + l.Unit
}
