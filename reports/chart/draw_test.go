package chart_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"dwellcast/reports/chart"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
)

func TestContradictoryDataAreRefused(t *testing.T) {
	one := []float64{1, 2}
	nan := math.NaN()
	second := time.Second
	for want, c := range map[string]chart.Chart{
		"2 x and 1 y values":     chart.Line{Series: []chart.Series{{X: one, Y: one[:1]}}},
		"say in Band":            chart.Line{Series: []chart.Series{{X: one, Y: one, Low: one, High: one}}},
		"no values":              chart.Line{Series: []chart.Series{{X: one, Y: []float64{nan, nan}}}},
		"the first must be":      chart.Line{X: chart.Axis{From: 3, To: 1}, Series: []chart.Series{{X: one, Y: one}}},
		"rows of values":         chart.Grid{XS: one, YS: one},
		"must rise":              chart.Grid{XS: []float64{2, 1}, YS: one, Values: [][]float64{one, one}},
		"no finite values":       chart.Grid{XS: one, YS: one, Values: [][]float64{{nan, nan}, {nan, nan}}},
		"no inputs":              chart.Tornado{},
		"must be finite":         chart.Tornado{Swings: []chart.Swing{{Low: nan}}},
		"between 1 and 12":       chart.Shares{},
		"instead of 1":           chart.Shares{States: []string{"a", "b"}, Rows: []chart.ShareRow{{Shares: []float64{0.5, 0.4}}}},
		"between 0 and 1":        chart.Shares{States: []string{"a", "b"}, Rows: []chart.ShareRow{{Shares: []float64{1.5, -0.5}}}},
		"does not add up":        chart.Waterfall{Ideal: 100, Good: 80, Losses: []chart.Loss{{Name: "a", Value: 19}}},
		"must be above 0":        chart.Timing{},
		"neither curves nor":     chart.Timing{Revolution: second},
		"degrees must rise":      chart.Timing{Revolution: second, Curves: []chart.Curve{{Degrees: []float64{10, 5}, Position: one}}},
		"must start within":      chart.Timing{Revolution: second, Rows: []chart.WindowRow{{Windows: []chart.Window{{Span: chart.Span{From: 0, To: 400}}}}}},
		"must be 0 or more":      chart.Timing{Revolution: second, Rows: []chart.WindowRow{{Windows: []chart.Window{{Span: chart.Span{From: 0, To: 90}, Slack: -1}}}}},
		"no curve or row":        chart.Timing{Revolution: second, Rows: []chart.WindowRow{{Name: "a"}}, Margins: []chart.Margin{{On: "b", Span: chart.Span{To: 9}}}},
		"velocity at 90 degrees": chart.Timing{Revolution: second, Curves: []chart.Curve{{Degrees: []float64{0, 90}, Position: one, Velocity: []float64{1, nan}}}},
	} {
		if _, err := c.Draw(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v; want one with %q", err, want)
		}
	}
}

// The table of widths is that of the font in the PNG and PDF files.
func TestWidthsAreThoseOfTheFont(t *testing.T) {
	for i, data := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		face, err := sfnt.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for r := ' '; r <= '~'; r++ {
			glyph, err := face.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			advance, err := face.GlyphAdvance(&buf, glyph, fixed.I(1000), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			want := float64(advance) / 64
			if got := chart.TextWidth(string(r), 1000, i == 1) / chart.Slackness; math.Abs(got-want) > 1 {
				t.Errorf("%q in face %d is %g wide, in the font %g", r, i, got, want)
			}
		}
	}
}

func TestTicksAreRoundAndFew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-1e6, 1e6).Draw(t, "from")
		span := math.Pow(10, rapid.Float64Range(-3, 7).Draw(t, "log span"))
		n := rapid.IntRange(1, 20).Draw(t, "n")
		step := chart.Step(span, n)
		leading := step / math.Pow(10, math.Floor(math.Log10(step)+1e-9))
		if r := math.Round(leading); math.Abs(leading-r) > 1e-6 || r != 1 && r != 2 && r != 5 {
			t.Fatalf("step %g for a span of %g in %d parts", step, span, n)
		}
		values := chart.Ticks(from, from+span, step)
		if len(values) > n+1 {
			t.Fatalf("%d ticks for at most %d steps", len(values), n)
		}
		for _, v := range values {
			if v < from-1e-5*step || v > from+span+1e-5*step {
				t.Fatalf("tick %g outside of %g to %g", v, from, from+span)
			}
		}
	})
}

func TestBrief(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 0.85: "0.85", 1234.5: "1234", 11600: "11600", 48e6: "48\u00a0000\u00a0000", -235294: "−235\u00a0294", 2.4830001: "2.483",
		0.00048: "0.00048", 9.6e-5: "9.6×10^-5", 3e12: "3×10^12", -0.5: "−0.5", 999.96: "1000", 1e-300: "1×10^-300",
	} {
		if got := chart.Brief(v); got != want {
			t.Errorf("Brief(%g) = %q, want %q", v, got, want)
		}
	}
}

// On a plane the contour is a straight line, and linear interpolation finds it exactly; around a peak it closes.
func TestContour(t *testing.T) {
	g := chart.Grid{XS: []float64{0, 1, 2, 4}, YS: []float64{0, 1, 3}}
	for _, y := range g.YS {
		var row []float64
		for _, x := range g.XS {
			row = append(row, x+2*y)
		}
		g.Values = append(g.Values, row)
	}
	lines := g.Contour(3.5)
	if len(lines) != 1 {
		t.Fatalf("%d lines on a plane", len(lines))
	}
	for _, p := range lines[0] {
		if math.Abs(p[0]+2*p[1]-3.5) > 1e-12 {
			t.Errorf("%v is not on the line x + 2 y = 3.5", p)
		}
	}
	peak := chart.Grid{XS: []float64{0, 1, 2}, YS: []float64{0, 1, 2}, Values: [][]float64{{0, 0, 0}, {0, 1, 0}, {0, 0, 0}}}
	want := [][][2]float64{{{1, 0.5}, {0.5, 1}, {1, 1.5}, {1.5, 1}, {1, 0.5}}}
	got := peak.Contour(0.5)
	if len(got) != 1 || len(got[0]) != 5 || got[0][0] != got[0][4] {
		t.Fatalf("contour around a peak: %v, want a closed line such as %v", got, want)
	}
	corners := map[[2]float64]bool{}
	for _, p := range got[0] {
		corners[p] = true
	}
	for _, p := range want[0] {
		if !corners[p] {
			t.Errorf("contour around a peak misses %v", p)
		}
	}
}

// Hatch lines cover a box evenly: their whole length times their distance is its area.
func TestHatchCoversABox(t *testing.T) {
	for _, angle := range []float64{0, 45, -45, 90} {
		area := chart.HatchLength(3, 5, 403, 305, angle, 2) * 2
		if math.Abs(area-400*300) > 0.01*400*300 {
			t.Errorf("at %g degrees the hatch covers %g of %d", angle, area, 400*300)
		}
	}
}

func TestClipLine(t *testing.T) {
	run := [][2]float64{{-1, 0.5}, {0.5, 0.5}, {0.5, 2}, {0.75, 2}, {0.75, -1}}
	want := [][][2]float64{{{0, 0.5}, {0.5, 0.5}, {0.5, 1}}, {{0.75, 1}, {0.75, 0}}}
	if diff := cmp.Diff(want, chart.ClipLine(run, 0, 0, 1, 1)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
