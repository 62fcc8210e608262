package random_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"testing"

	"dwellcast/sim/random"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "store the hashes of this processor")

// The draws must be the same to the bit on every processor. The stored hashes
// were made on amd64; run this test with GOARCH=386, GOARCH=arm64 (which has a
// fused multiply-add) and GOAMD64=v3 as well.
func TestDrawsAreTheSameOnAnyProcessor(t *testing.T) {
	const file, n = "testdata/draws.json", 100_000
	got := map[string]string{}
	for _, l := range laws(t) {
		stream := seeded(random.Key(l.name, "portable"), 1, 0)
		h := fnv.New64a()
		for range n {
			u := stream.Uniform()
			x := math.Float64bits(l.d.Quantile(u))
			h.Write([]byte{byte(x), byte(x >> 8), byte(x >> 16), byte(x >> 24),
				byte(x >> 32), byte(x >> 40), byte(x >> 48), byte(x >> 56)})
		}
		moments := fmt.Sprintf("%x %x", math.Float64bits(l.d.Mean()), math.Float64bits(l.d.Variance()))
		got[l.name] = fmt.Sprintf("%016x %s", h.Sum64(), moments)
	}
	if *update {
		text, err := json.MarshalIndent(got, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, append(text, '\n'), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("hash of %d draws, mean and variance (-stored +drawn):\n%s", n, diff)
	}
}
