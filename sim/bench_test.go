package sim_test

import (
	"testing"
	"time"

	"dwellcast/sim"
	"dwellcast/sim/random"
)

// BenchmarkTandem is the kernel alone: four stations with exponential times and buffers of two between them, no account kept.
// One operation is one carton through the line.
func BenchmarkTandem(b *testing.B) {
	law, err := random.Exponential(1)
	if err != nil {
		b.Fatal(err)
	}
	const stations, throughput = 4, 0.70071290 // row ser4-bal-b2 of testdata/theory.csv
	c := sim.NewCalendar()
	var buffers [stations + 1]*sim.Buffer[int]
	for i := 1; i < stations; i++ {
		buffers[i] = sim.NewBuffer[int](c, 2, 0)
	}
	made := 0
	for i := range stations {
		act := random.NewSource(random.Drawn(law), random.Key(string(rune('a'+i)), "act"))
		act.Reset(1, 0)
		c.Start("station", func(p *sim.Process) {
			for {
				carton := 0
				if in := buffers[i]; in != nil {
					carton = in.Take(p)
				}
				p.Wait(act.Next())
				if out := buffers[i+1]; out != nil {
					out.Put(p, carton)
				} else {
					made++
				}
			}
		})
	}
	b.ReportAllocs()
	b.ResetTimer()
	if err := c.Run(time.Duration(float64(b.N) / throughput * 1e9)); err != nil {
		b.Fatal(err)
	}
	b.StopTimer()
	c.Reset()
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(max(1, made)), "ns/carton")
}
