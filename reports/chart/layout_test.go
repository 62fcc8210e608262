package chart_test

import (
	"testing"
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
