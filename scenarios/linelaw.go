package scenarios

import (
	"slices"
	"strings"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
)

// span bounds a time in a line file, or the mean of one that is drawn.
type span struct {
	positive bool
	least    time.Duration // of a time that is not 0
	most     time.Duration
}

// leastAct keeps a mistyped time, such as 1 us, from making a run endless.
const leastAct = time.Millisecond

func upTo(most time.Duration) span    { return span{most: most} }
func actUpTo(most time.Duration) span { return span{least: leastAct, most: most} }
func (s span) aboveZero() span        { s.positive = true; return s }

// hint says what may be written.
func (s span) hint() string {
	most := quantity.FormatDuration(s.most)
	switch {
	case s.positive:
		return "write between " + quantity.FormatDuration(max(s.least, time.Nanosecond)) + " and " + most
	case s.least > 0:
		return "write 0 s, or between " + quantity.FormatDuration(s.least) + " and " + most
	}
	return "write up to " + most
}

func (s span) holds(d time.Duration) bool {
	return d <= s.most && (d > 0 || !s.positive) && (d == 0 || d >= s.least)
}

// time reads a time that is always the same or follows a law. An absent one is 0.
func (r *lineReader) time(n *document.Node, bounds span) random.Sampler {
	if n == nil {
		return random.Sampler{}
	}
	before := r.p.Len()
	inner, sampler := n.Assumed(&r.p), random.Sampler{}
	if inner != nil && inner.Kind() == document.Map {
		sampler = r.drawnTime(inner)
	} else {
		sampler = random.Fixed(n.Duration(&r.p))
	}
	r.rangeWithin(n, bounds)
	if r.p.Len() > before || bounds.holds(sampler.Mean()) {
		return sampler
	}
	message := "can't be right here"
	if inner.Kind() == document.Map {
		message = "has a mean of " + quantity.FormatDuration(sampler.Mean()) + ", which can't be right here"
	}
	r.p.Add(inner, message, bounds.hint())
	return sampler
}

// rangeWithin holds the low and high of an assumption to the bounds of its value.
func (r *lineReader) rangeWithin(n *document.Node, bounds span) {
	for _, end := range n.Range() {
		if d := end.Duration(&r.p); !bounds.holds(d) && d > 0 {
			r.p.Add(end, "can't be right here", bounds.hint())
		}
	}
}

// drawnTime reads a law of times.
func (r *lineReader) drawnTime(n *document.Node) random.Sampler {
	if n.Has("recorded") {
		return r.recorded(n)
	}
	law := r.law(n, quantity.Time)
	if law == nil {
		return random.Sampler{}
	}
	return random.Drawn(law)
}

// recorded reads times that are replayed in their order.
func (r *lineReader) recorded(n *document.Node) random.Sampler {
	f := n.Map(&r.p)
	list := f.Take("recorded")
	var values []time.Duration
	for _, v := range list.List(&r.p) {
		values = append(values, v.Duration(&r.p))
	}
	f.Done()
	sampler, err := random.Recorded(values)
	if err != nil && list.Kind() == document.List {
		r.addLawError(list, err)
	}
	return sampler
}

// law reads a law of times, in seconds, or of counts: a map of one key, its name. It is nil where there was a mistake.
func (r *lineReader) law(n *document.Node, dimension quantity.Dimension) random.Distribution {
	entries := n.Map(&r.p).Entries()
	if len(entries) != 1 {
		r.p.Add(n, "is a map of "+quantity.FormatCount(int64(len(entries)), "key")+" where one law is wanted", lawHint(n, dimension))
		return nil
	}
	name := entries[0].Key.Raw()
	parameters, known := laws[name]
	if !known {
		hint := lawHint(n, dimension)
		if near := quantity.Nearest(name, lawNames()); near != "" {
			hint = "did you mean " + near + "?"
		}
		r.p.Report(document.Problem{At: entries[0].Key.At(), Path: n.Path(), Text: name, Message: "is no law", Hint: hint})
		return nil
	}
	before := r.p.Len()
	l := &lawReader{lineReader: r, dimension: dimension, node: entries[0].Value}
	law, err := parameters(l)
	if r.p.Len() > before {
		return nil
	}
	if err != nil {
		r.addLawError(entries[0].Value, err)
		return nil
	}
	return law
}

// lawHint shows how a law is written.
func lawHint(n *document.Node, dimension quantity.Dimension) string {
	if n.Has("mean") && n.Has("cv") {
		return "say which law, as in {lognormal: {mean: ..., cv: ...}}; laws: " + strings.Join(lawNames(), ", ")
	}
	return "write for example {exponential: " + dimension.Example() + "}; laws: " + strings.Join(lawNames(), ", ")
}

// addLawError reports what a law does not accept: "lognormal: cv is 0; give a number above 0". The name of the law is in
// the path already.
func (r *lineReader) addLawError(n *document.Node, err error) {
	message, hint, _ := strings.Cut(err.Error(), "; ")
	_, message, _ = strings.Cut(message, ": ")
	r.p.Add(n, message, hint)
}

func lawNames() []string {
	names := []string{"recorded"}
	for name := range laws {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
