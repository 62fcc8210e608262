package random

import "math/rand/v2"

// Stream is one sequence of uniforms. It is a plain value: embed it, copy it,
// and seed it again for every replication; it never allocates.
type Stream struct {
	pcg rand.PCG
}

// Seed puts the stream at the start of its sequence for one replication
// (counted from 0). The two words of the generator's state are two successive
// outputs of a SplitMix64 sequence that starts from key and seed; replication r
// takes outputs 2r and 2r+1 of it, so no two replications share a word.
func (s *Stream) Seed(key, seed uint64, replication int) {
	start := mix(mix(key) + seed)
	at := start + golden*(2*uint64(replication))
	s.pcg.Seed(mix(at+golden), mix(at+golden+golden))
}

// Uniform returns the next uniform, strictly between 0 and 1. It is the centre
// of one of 2^52 equal cells, an odd multiple of 2^-53, so that both u and 1-u
// are exact.
func (s *Stream) Uniform() float64 {
	return float64((float64(s.pcg.Uint64()>>12) + 0.5) * 0x1p-52)
}
