package stations_test

import (
	"fmt"
	"testing"
	"time"

	"dwellcast/stations"
)

func TestSmoke(t *testing.T) {
	for _, v := range []struct{ set, dwell float64 }{{1500, 1.15}, {1500, 1.6}, {1800, 1.15}} {
		s, err := stations.New(benchLine(t, v.set, v.dwell))
		if err != nil {
			t.Fatal(err)
		}
		for _, no := range []bool{false, true} {
			s.NoRepeats = no
			sum := s.NewTally()
			for r := range 1000 {
				if err := s.Shift(1, r); err != nil {
					t.Fatal(err)
				}
				sum.Add(s.Tally)
			}
			fmt.Println(float64(sum.Flow[stations.Good])/1000, float64(sum.Cycles[0])/1000, sum.Flow)
			for i := range 4 {
				tot := int64(0)
				for st := range stations.NumStates {
					x := *sum.State(i, st)
					tot += x
					fmt.Printf("%s %.5f ", st, float64(x)/1000/float64(8*time.Hour))
				}
				fmt.Println(float64(tot)/1000/float64(8*time.Hour), float64(*sum.At(i, stations.LastClear))/float64(sum.Cycles[0]))
			}
		}
	}
	s, err := stations.New(tandem(t, 4, 2, 100*time.Hour))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	fmt.Println(float64(s.Tally.Flow[stations.Good])/360000, s.Tally.Flow, s.Tally.Sole, s.Tally.Shifting)
}

func BenchmarkBenchLine(b *testing.B) {
	for _, no := range []bool{false, true} {
		b.Run(fmt.Sprint("steps=", no), func(b *testing.B) {
			s, _ := stations.New(benchLine(b, 1500, 1.15))
			s.NoRepeats = no
			b.ReportAllocs()
			for i := range b.N {
				s.Shift(1, i)
			}
		})
	}
}

func BenchmarkTandem(b *testing.B) {
	b.ReportAllocs()
	s, _ := stations.New(tandem(b, 4, 2, time.Duration(float64(b.N)/0.7007*1e9)))
	if err := s.Shift(1, 0); err != nil {
		b.Fatal(err)
	}
}
