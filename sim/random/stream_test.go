package random_test

import (
	"fmt"
	"math"
	"testing"

	"dwellcast/sim/random"
)

func seeded(key, seed uint64, replication int) *random.Stream {
	var s random.Stream
	s.Seed(key, seed, replication)
	return &s
}

// Keys are FNV-1a and SplitMix64, recomputed outside with
// another program, which gives the published FNV-1a of "a", 0xaf63dc4c8601ec8c,
// and first SplitMix64 output for seed 0, 0xe220a8397b1dcdaf (from memory).
func TestKeyIsStable(t *testing.T) {
	for _, c := range []struct {
		station, purpose string
		want             uint64
	}{
		{"", "", 0x25fc6dd36ce04b20}, {"sealer", "dwell", 0xcd6c0905c910a6}, {"seal", "erdwell", 0x311aedd1174cf3f8},
	} {
		if got := random.Key(c.station, c.purpose); got != c.want {
			t.Errorf("Key(%q, %q) = %#x, want %#x", c.station, c.purpose, got, c.want)
		}
	}
}

func TestSeedRepeats(t *testing.T) {
	key := random.Key("sealer", "dwell")
	a, b := seeded(key, 7, 3), seeded(key, 7, 3)
	b.Uniform()
	b.Seed(key, 7, 3)
	for i := range 1000 {
		if x, y := a.Uniform(), b.Uniform(); x != y || !(x > 0 && x < 1) {
			t.Fatalf("draw %d: %v and %v", i, x, y)
		}
	}
}

// Streams next to each other in name, purpose, seed or replication must be
// independent: a chi-square over 16 x 16 cells, and the correlation.
func TestNeighboursAreIndependent(t *testing.T) {
	key := random.Key
	base := key("filler", "time")
	var family checks
	for r := range 8 {
		pairs := map[string]*random.Stream{
			"next replication": seeded(base, 1, r+1),
			"next seed":        seeded(base, 2, r),
			"next station":     seeded(key("filles", "time"), 1, r),
			"next purpose":     seeded(key("filler", "timf"), 1, r),
			"next key":         seeded(base+1, 1, r),
			"key against seed": seeded(base+1, 0, r),
		}
		for _, name := range []string{"next replication", "next seed", "next station", "next purpose", "next key", "key against seed"} {
			family.pair(fmt.Sprintf("%s of %d", name, r), seeded(base, 1, r), pairs[name])
		}
		shifted := seeded(base, 1, r)
		shifted.Uniform()
		family.pair(fmt.Sprintf("next draw of %d", r), seeded(base, 1, r), shifted)
	}
	family.judge(t)
}

func (c *checks) pair(name string, a, b *random.Stream) {
	const side, n = 16, 40_000
	counts, expected := make([]float64, side*side), make([]float64, side*side)
	for i := range expected {
		expected[i] = n / side / side
	}
	product := 0.0
	for range n {
		x, y := a.Uniform(), b.Uniform()
		counts[int(x*side)*side+int(y*side)]++
		product += (x - 0.5) * (y - 0.5)
	}
	c.chiSquare(name+", cells", counts, expected, side*side-1)
	c.normal(name+", correlation", product*12/math.Sqrt(n))
}

// The first draws of many replications are themselves uniform.
func TestFirstDrawsAcrossReplications(t *testing.T) {
	const cells, n = 64, 64_000
	var family checks
	for _, seed := range []uint64{0, 1, math.MaxUint64} {
		counts, expected := make([]float64, cells), make([]float64, cells)
		for r := range n {
			counts[int(seeded(random.Key("robot", "cycle"), seed, r).Uniform()*cells)]++
		}
		for i := range expected {
			expected[i] = n / cells
		}
		family.chiSquare(fmt.Sprintf("seed %d", seed), counts, expected, cells-1)
	}
	family.judge(t)
}

func TestDrawingDoesNotAllocate(t *testing.T) {
	var s random.Stream
	d, err := random.Lognormal(55, 0.9)
	if err != nil {
		t.Fatal(err)
	}
	source := random.NewSource(random.Drawn(d), random.Key("a", "b"))
	if n := testing.AllocsPerRun(100, func() {
		s.Seed(1, 2, 3)
		s.Uniform()
		source.Reset(1, 2)
		source.Next()
	}); n != 0 {
		t.Errorf("%v allocations, want none", n)
	}
}
