package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// NarrowestText and roomy are screen widths in columns: the least, and the one from which all revolutions are shown.
const (
	NarrowestText = 60
	roomy         = 100
)

// Text draws the chart with characters for a screen of a width in columns, at least 60: one revolution below 100 columns, else as
// many as the chart has. With ascii no character is outside of ASCII. A star marks the critical path.
func (t Timing) Text(width int, ascii bool) (string, error) {
	if err := t.check(); err != nil {
		return "", err
	}
	width = max(width, NarrowestText)
	if width < roomy {
		t.Revolutions = 1
	}
	s := newTextSheet(t, width, ascii)
	s.axis()
	if t.Index != nil {
		s.row("index", "", s.spans(*t.Index, '<', '-', '>'))
	}
	if t.Pause > 0 {
		s.row("master stands", brief(t.Pause.Seconds())+" s", s.spans(Span{360, t.period()}, '~', '~', '~'))
	}
	for _, c := range t.Curves {
		s.row(c.Name, c.strokeWords(), s.heights(c))
	}
	for _, r := range t.Rows {
		s.row(r.Name, "", s.windows(r))
	}
	s.seconds()
	s.legend()
	s.notes()
	out := s.out.String()
	if ascii {
		out = strings.Map(func(r rune) rune {
			if r == '\u00a0' {
				return ' '
			}
			if r > '~' {
				return '?'
			}
			return r
		}, strings.NewReplacer("−", "-", "×", "x", "°", " deg").Replace(out))
	}
	return out, nil
}

// textSheet is a chart of characters while it is written.
type textSheet struct {
	Timing
	ascii          bool
	width          int
	names, columns int // of the names at the left and of the chart
	unnamed        []string
	out            strings.Builder
}

func newTextSheet(t Timing, width int, ascii bool) *textSheet {
	s := &textSheet{Timing: t, ascii: ascii, width: width}
	values := 3
	for _, c := range t.Curves {
		s.names = max(s.names, utf8.RuneCountInString(c.Name))
		values = max(values, utf8.RuneCountInString(c.strokeWords()))
	}
	for _, r := range t.Rows {
		s.names = max(s.names, utf8.RuneCountInString(r.Name))
	}
	if t.Pause > 0 {
		s.names, values = max(s.names, len("master stands")), max(values, len(brief(t.Pause.Seconds()))+2)
	}
	s.names = min(max(s.names, len("degrees")), width/5)
	s.columns = width - s.names - 2 - values
	return s
}

// column is where a degree falls.
func (s *textSheet) column(degree float64) int {
	return min(max(int(math.Round(degree/s.length()*float64(s.columns))), 0), s.columns)
}

// row writes a name, a picture and a value; a name that is too long goes on below.
func (s *textSheet) row(name, value string, picture []rune) {
	for i, part := range chunks(name, s.names) {
		line := fmt.Sprintf("%-*s", s.names, part)
		if i == 0 {
			line += " " + string(picture) + " " + value
		}
		s.out.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// chunks breaks words into lines of so many characters at most; always one at least.
func chunks(words string, width int) []string {
	var out []string
	line := ""
	for _, word := range strings.Fields(words) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			out, line = append(out, line), word
		}
		for utf8.RuneCountInString(line) > width {
			runes := []rune(line)
			out, line = append(out, string(runes[:width])), string(runes[width:])
		}
	}
	return append(out, line)
}

// blank is an empty picture.
func (s *textSheet) blank() []rune { return slices.Repeat([]rune{' '}, s.columns) }

// axis writes the degrees and a ruler below them.
func (s *textSheet) axis() {
	every := 360.0
	for _, v := range []float64{30, 45, 90, 180} {
		if v/s.length()*float64(s.columns) >= 5 {
			every = v
			break
		}
	}
	numbers, ruler := slices.Repeat([]rune{' '}, s.columns+3), slices.Repeat([]rune{'-'}, s.columns)
	free := 0
	for k := range s.cycles() {
		for v := 0.0; v <= 360; v += every {
			at := s.column(float64(k)*s.period() + v)
			ruler[min(at, s.columns-1)] = '+'
			words := []rune(fmt.Sprintf("%.0f", 360*float64(k)+v))
			if at = max(at-len(words)/2, 0); at >= free && at+len(words) <= len(numbers) {
				copy(numbers[at:], words)
				free = at + len(words) + 1
			}
		}
	}
	s.row("degrees", "", numbers)
	s.row("", "", ruler)
}

// seconds writes the time below the chart.
func (s *textSheet) seconds() {
	whole := float64(s.cycles()) * (s.Revolution + s.Pause).Seconds()
	t := newTicks(0, whole, s.columns/9)
	numbers, ruler := slices.Repeat([]rune{' '}, s.columns+3), slices.Repeat([]rune{'-'}, s.columns)
	for i, v := range t.values {
		at := int(math.Round(v / whole * float64(s.columns)))
		ruler[min(at, s.columns-1)] = '+'
		words := []rune(t.words[i])
		if at = max(at-len(words)/2, 0); at+len(words) <= len(numbers) {
			copy(numbers[at:], words)
		}
	}
	unit := "seconds"
	if t.power != 0 {
		unit = fmt.Sprintf("10^%d s", t.power)
	}
	s.row("", "", ruler)
	s.row(unit, "", numbers)
}

// spans draws the repeats of a span between two end characters.
func (s *textSheet) spans(span Span, first, fill, last rune) []rune {
	out := s.blank()
	for _, o := range s.occurrences(span) {
		from, to := s.column(o.From), s.column(o.To)
		for c := from; c < to; c++ {
			out[c] = fill
		}
		if to > from && o.From >= 0 {
			out[from] = first
		}
		if to > from+1 && o.To <= s.length() {
			out[to-1] = last
		}
	}
	return out
}

// heights draws a curve in steps of its stroke: eighths as blocks, or ninths as digits with a point for the rest position.
func (s *textSheet) heights(c Curve) []rune {
	steps := []rune("▁▂▃▄▅▆▇█")
	if s.ascii {
		steps = []rune(".123456789")
	}
	low, high := c.travel()
	out := s.blank()
	for i := range out {
		degree := math.Mod((float64(i)+0.5)/float64(s.columns)*s.length(), s.period())
		share := 0.0
		if high > low {
			share = (c.at(min(degree, 360)) - low) / (high - low)
		}
		out[i] = steps[int(math.Round(share*float64(len(steps)-1)))]
	}
	return out
}

// at is the displacement at a degree, between the points along a straight line.
func (c Curve) at(degree float64) float64 {
	i, _ := slices.BinarySearch(c.Degrees, degree)
	switch {
	case i == 0:
		return c.Position[0]
	case i == len(c.Degrees):
		return c.Position[i-1]
	}
	d0, d1 := c.Degrees[i-1], c.Degrees[i]
	return c.Position[i-1] + (c.Position[i]-c.Position[i-1])*(degree-d0)/(d1-d0)
}
