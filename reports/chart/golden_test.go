package chart_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"dwellcast/reports/chart"

	"github.com/google/go-cmp/cmp"
)

var (
	update   = flag.Bool("update", false, "write the golden drawings anew")
	pictures = flag.String("pictures", "", "folder that gets every sample in every format, to be looked at")
)

// drawn lays out a sample and writes it.
func drawn(t *testing.T, c chart.Chart, f chart.Format) []byte {
	t.Helper()
	d, err := c.Draw()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := d.Write(&b, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGoldenDrawings(t *testing.T) {
	for name, c := range samples() {
		t.Run(name, func(t *testing.T) {
			got := drawn(t, c, chart.SVG)
			file := filepath.Join("testdata", name+".svg")
			if *update {
				if err := os.WriteFile(file, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), string(got)); diff != "" {
				t.Errorf("drawing differs from %s; look at it, then run with -update (-want +got):\n%.3000s", file, diff)
			}
		})
	}
}

func TestPictures(t *testing.T) {
	if *pictures == "" {
		t.Skip("needs -pictures FOLDER")
	}
	for name, c := range samples() {
		for _, f := range chart.Formats() {
			if err := os.WriteFile(filepath.Join(*pictures, name+"."+string(f)), drawn(t, c, f), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
