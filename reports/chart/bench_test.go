package chart_test

import (
	"io"
	"testing"

	"dwellcast/reports/chart"
)

// BenchmarkTiming lays out the timing chart and writes it in each format.
func BenchmarkTiming(b *testing.B) {
	for _, f := range chart.Formats() {
		b.Run(string(f), func(b *testing.B) {
			for b.Loop() {
				d, err := cartonTiming().Draw()
				if err != nil {
					b.Fatal(err)
				}
				if err := d.Write(io.Discard, f); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
