package chart_test

import (
	"bytes"
	"slices"
	"testing"
	"time"

	"dwellcast/reports/chart"

	"pgregory.net/rapid"
)

// No label leaves the picture, and no two labels touch, in any sample.
func TestLabelsKeepApart(t *testing.T) {
	for name, c := range samples() {
		d, err := c.Draw()
		if err != nil {
			t.Fatal(err)
		}
		texts := d.Texts()
		for i, a := range texts {
			if a.X0 < 0 || a.Y0 < 0 || a.X1 > d.Width || a.Y1 > d.Height {
				t.Errorf("%s: %q from %.1f, %.1f to %.1f, %.1f leaves the picture of %.1f by %.1f", name, a.Words, a.X0, a.Y0, a.X1, a.Y1, d.Width, d.Height)
			}
			for _, b := range texts[:i] {
				if a.X0 < b.X1 && b.X0 < a.X1 && a.Y0 < b.Y1 && b.Y0 < a.Y1 {
					t.Errorf("%s: %q and %q touch near %.1f, %.1f", name, a.Words, b.Words, a.X0, a.Y0)
				}
			}
		}
		if len(texts) == 0 {
			t.Errorf("%s: no labels at all", name)
		}
	}
}

// Whatever finite values, names and sizes a chart gets: it is drawn without numbers that are none, and its labels stay inside.
func TestAnyChartStaysInThePicture(t *testing.T) {
	words := rapid.StringMatching(`[a-zA-Z0-9é°. ]{0,60}`)
	values := rapid.OneOf(rapid.Float64Range(-1e12, 1e12), rapid.Float64Range(-1e-9, 1e-9), rapid.Just(0.0), rapid.Just(1e17))
	caption := rapid.Custom(func(t *rapid.T) chart.Caption {
		return chart.Caption{Title: words.Draw(t, "title"), Subtitle: words.Draw(t, "subtitle"), Foot: words.Draw(t, "foot")}
	})
	charts := []func(t *rapid.T) chart.Chart{
		func(t *rapid.T) chart.Chart {
			l := chart.Line{Caption: caption.Draw(t, "caption"), Y: chart.Axis{Title: words.Draw(t, "y"), Unit: "mm"}, X: chart.Axis{Title: words.Draw(t, "x")}}
			for range rapid.IntRange(1, 4).Draw(t, "series") {
				xs := rapid.SliceOfN(values, 1, 5).Draw(t, "xs")
				slices.Sort(xs)
				l.Series = append(l.Series, chart.Series{Name: words.Draw(t, "name"), X: xs, Y: rapid.SliceOfN(values, len(xs), len(xs)).Draw(t, "ys")})
			}
			for range rapid.IntRange(0, 5).Draw(t, "references") {
				l.References = append(l.References, chart.Reference{Label: words.Draw(t, "label"), At: values.Draw(t, "at"), Vertical: rapid.Bool().Draw(t, "vertical")})
			}
			return l
		},
		func(t *rapid.T) chart.Chart {
			c := chart.Tornado{Caption: caption.Draw(t, "caption"), Base: values.Draw(t, "base")}
			for range rapid.IntRange(1, 6).Draw(t, "swings") {
				c.Swings = append(c.Swings, chart.Swing{Name: words.Draw(t, "name"), LowInput: "10 mm", HighInput: "12 mm", Low: values.Draw(t, "low"), High: values.Draw(t, "high")})
			}
			return c
		},
		func(t *rapid.T) chart.Chart {
			c := chart.Waterfall{Caption: caption.Draw(t, "caption"), Unit: "cartons", From: "ideal", To: "good", Ideal: values.Draw(t, "ideal")}
			c.Good = c.Ideal
			for range rapid.IntRange(0, 6).Draw(t, "losses") {
				v := values.Draw(t, "loss")
				c.Losses, c.Good = append(c.Losses, chart.Loss{Name: words.Draw(t, "name"), Value: v}), c.Good-v
			}
			return c
		},
		func(t *rapid.T) chart.Chart {
			c := chart.Timing{Caption: caption.Draw(t, "caption"), Revolution: time.Duration(rapid.Int64Range(1, 1e12).Draw(t, "revolution")), Pause: time.Duration(rapid.Int64Range(0, 1e10).Draw(t, "pause"))}
			degree := rapid.Float64Range(0, 359)
			for range rapid.IntRange(1, 5).Draw(t, "rows") {
				row := chart.WindowRow{Name: words.Draw(t, "name")}
				for range rapid.IntRange(0, 5).Draw(t, "windows") {
					row.Windows = append(row.Windows, chart.Window{Name: words.Draw(t, "window"), Span: chart.Span{From: degree.Draw(t, "from"), To: degree.Draw(t, "to")},
						Critical: rapid.Bool().Draw(t, "critical"), Slack: time.Duration(rapid.Int64Range(0, 1e9).Draw(t, "slack"))})
				}
				c.Rows = append(c.Rows, row)
			}
			if _, err := c.Text(rapid.IntRange(0, 200).Draw(t, "width"), true); err != nil {
				t.Fatal(err)
			}
			return c
		},
	}
	rapid.Check(t, func(t *rapid.T) {
		d, err := rapid.SampledFrom(charts).Draw(t, "kind")(t).Draw()
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range d.Texts() {
			if !(a.X0 >= 0 && a.Y0 >= 0 && a.X1 <= d.Width && a.Y1 <= d.Height) {
				t.Fatalf("%q from %.1f, %.1f to %.1f, %.1f leaves the picture of %.1f by %.1f", a.Words, a.X0, a.Y0, a.X1, a.Y1, d.Width, d.Height)
			}
		}
		var b bytes.Buffer
		if err := d.Write(&b, chart.SVG); err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(b.Bytes(), []byte(`"NaN`)) || bytes.Contains(b.Bytes(), []byte("Inf")) {
			t.Fatal("the file has coordinates that are no numbers")
		}
	})
}
