package random

import "time"

// Source is what a station holds for a time it takes: the sampler, a stream of
// its own and, for a recorded sequence, the position in it. It is a plain
// value; Reset it before the first Next of every replication.
type Source struct {
	Sampler
	stream Stream
	key    uint64
	next   int
}

// NewSource returns a source of sampler's times on the stream named by key,
// which is Key(station, purpose).
func NewSource(sampler Sampler, key uint64) Source {
	return Source{Sampler: sampler, key: key}
}

// Reset goes to the start of the given replication (counted from 0).
func (s *Source) Reset(seed uint64, replication int) {
	s.stream.Seed(s.key, seed, replication)
	s.next = 0
}

// Next returns the next time, >= 0. A fixed time costs one comparison.
func (s *Source) Next() time.Duration {
	if s.kind == fixedKind {
		return s.fixed
	}
	return s.draw()
}

// draw is kept out of line so that Next itself goes in line.
//
//go:noinline
func (s *Source) draw() time.Duration {
	if s.kind == drawnKind {
		return nanoseconds(float64(s.nanos * s.law.Quantile(s.stream.Uniform())))
	}
	d := s.values[s.next]
	s.next++
	if s.next == len(s.values) {
		s.next = 0
	}
	return d
}
