package random

import (
	"errors"
	"fmt"
	"slices"
	"time"
)

// Sampler is a time that a station takes: always the same, drawn from a law,
// or recorded. It is an immutable value; the zero Sampler is a time of 0.
type Sampler struct {
	kind   kind
	fixed  time.Duration   // the value of a fixed time
	law    Distribution    // in seconds, of a drawn time
	nanos  float64         // nanoseconds that one second of law stands for
	values []time.Duration // of a recorded time
}

type kind uint8

const (
	fixedKind kind = iota
	drawnKind
	recordedKind
)

// Fixed returns the sampler that always gives d; a negative d counts as 0.
func Fixed(d time.Duration) Sampler {
	return Sampler{fixed: min(max(d, 0), Longest)}
}

// Drawn returns the sampler that draws from a law of seconds. A law without
// variance becomes a fixed time.
func Drawn(law Distribution) Sampler {
	if law.Variance() == 0 {
		return Fixed(nanoseconds(float64(law.Mean() * 1e9)))
	}
	return Sampler{kind: drawnKind, law: law, nanos: 1e9}
}

// Recorded returns the sampler that replays values (each >= 0) in order, from
// the first in every replication, and starts over at the end. Values that are
// all equal become a fixed time.
func Recorded(values []time.Duration) (Sampler, error) {
	if len(values) == 0 {
		return Sampler{}, errors.New("recorded: no values; list at least one")
	}
	same := true
	for i, v := range values {
		if v < 0 || v > Longest {
			return Sampler{}, fmt.Errorf("recorded: value %d is %v; give a time from 0 to 73 years", i+1, v)
		}
		same = same && v == values[0]
	}
	if same {
		return Fixed(values[0]), nil
	}
	return Sampler{kind: recordedKind, values: slices.Clone(values)}, nil
}

// Draw returns one time, rounded to the nanosecond, never negative. A fixed
// time uses no random number and any other exactly one. A Sampler has no
// position in a recorded sequence, so it draws any one of its values; a Source
// replays them in order.
func (s Sampler) Draw(stream *Stream) time.Duration {
	switch s.kind {
	case fixedKind:
		return s.fixed
	case drawnKind:
		return nanoseconds(float64(s.nanos * s.law.Quantile(stream.Uniform())))
	}
	return s.values[int(float64(stream.Uniform()*float64(len(s.values))))]
}

// Fixed reports whether the time is always the same.
func (s Sampler) Fixed() bool { return s.kind == fixedKind }

// Mean returns the expectation, rounded to the nanosecond. That of a recorded
// time is the average of its values.
func (s Sampler) Mean() time.Duration {
	switch s.kind {
	case fixedKind:
		return s.fixed
	case drawnKind:
		return nanoseconds(float64(s.nanos * s.law.Mean()))
	}
	return nanoseconds(float64(s.meanSeconds() * 1e9))
}

// Variance returns the variance in seconds squared. That of a recorded time is
// the average squared distance from the average.
func (s Sampler) Variance() float64 {
	switch s.kind {
	case fixedKind:
		return 0
	case drawnKind:
		return float64(squared(s.nanos/1e9) * s.law.Variance())
	}
	mean, sum := s.meanSeconds(), 0.0
	for _, v := range s.values {
		sum += squared(v.Seconds() - mean)
	}
	return sum / float64(len(s.values))
}

func (s Sampler) meanSeconds() float64 {
	sum := 0.0
	for _, v := range s.values {
		sum += v.Seconds()
	}
	return sum / float64(len(s.values))
}

// Quantile returns the time below which a share p of the draws lie, 0 <= p <= 1.
func (s Sampler) Quantile(p float64) time.Duration {
	if s.kind != recordedKind {
		return s.end(p)
	}
	values := slices.Sorted(slices.Values(s.values))
	return values[min(int(float64(p*float64(len(values)))), len(values)-1)]
}

// averagePoints is at how many quantiles, in the middle of equal shares, a law is averaged over.
const averagePoints = 2000

// Average returns the expectation of a bounded figure that depends on the time drawn. It is exact for a fixed and for a recorded time; over
// a law it is the midpoint rule.
func (s Sampler) Average(figure func(time.Duration) float64) float64 {
	sum := 0.0
	switch s.kind {
	case fixedKind:
		return figure(s.fixed)
	case drawnKind:
		for i := range averagePoints {
			sum += figure(s.end((float64(i) + 0.5) / averagePoints))
		}
		return sum / averagePoints
	}
	for _, v := range s.values {
		sum += figure(v)
	}
	return sum / float64(len(s.values))
}

// Min returns the shortest time that can be drawn.
func (s Sampler) Min() time.Duration {
	if s.kind == recordedKind {
		return slices.Min(s.values)
	}
	return s.end(0)
}

// Max returns the longest time that can be drawn, Longest if there is no limit.
func (s Sampler) Max() time.Duration {
	if s.kind == recordedKind {
		return slices.Max(s.values)
	}
	return s.end(1)
}

// end returns the quantile at p of a time that is not recorded.
func (s Sampler) end(p float64) time.Duration {
	if s.kind == fixedKind {
		return s.fixed
	}
	return nanoseconds(float64(s.nanos * s.law.Quantile(p)))
}

// Scale returns a sampler of k times the values, with the same luck. It panics
// unless k is finite and >= 0.
func (s Sampler) Scale(k float64) Sampler {
	checkScale(k)
	switch {
	case k == 0:
		return Sampler{}
	case s.kind == fixedKind:
		return Sampler{fixed: scaled(s.fixed, k)}
	case s.kind == drawnKind:
		return Sampler{kind: drawnKind, law: s.law, nanos: float64(s.nanos * k)}
	}
	values := make([]time.Duration, len(s.values))
	for i, v := range s.values {
		values[i] = scaled(v, k)
	}
	return Sampler{kind: recordedKind, values: values}
}

// String describes the time, such as "1.2s" or "exponential(mean 20) s".
func (s Sampler) String() string {
	switch {
	case s.kind == fixedKind:
		return s.fixed.String()
	case s.kind == recordedKind:
		return fmt.Sprintf("recorded(%d values, %v to %v)", len(s.values), s.Min(), s.Max())
	case s.nanos == 1e9:
		return s.law.String() + " s"
	}
	return fmt.Sprintf("%.6g x %v s", s.nanos/1e9, s.law)
}
