package sim

import "time"

// Content is the account of what a buffer held.
type Content struct {
	last time.Duration
	// Integral is the content over time; divided by the time it is the mean content.
	Integral Area
	// Empty and Full are the times without an item and without room.
	Empty, Full time.Duration
	// Entered counts the items put in, Waited those that were not taken at the instant at which they could have been.
	Entered, Waited int64
}

// Area is a content over time, in item seconds and the item nanoseconds beyond them: so that neither a large buffer nor a long run makes
// it wrap.
type Area struct{ Seconds, Nanos int64 }

// add takes in that many items for a time.
func (a *Area) add(count int, since time.Duration) {
	nanos := a.Nanos + int64(count)*int64(since%time.Second)
	a.Seconds += int64(count)*int64(since/time.Second) + nanos/int64(time.Second)
	a.Nanos = nanos % int64(time.Second)
}

// change closes the time since the last change, in which the buffer held count items.
func (c *Content) change(now time.Duration, count, capacity int) {
	since := now - c.last
	c.last = now
	c.Integral.add(count, since)
	if count == 0 {
		c.Empty += since
	}
	if capacity >= 0 && count >= capacity {
		c.Full += since
	}
}

// Close brings the account up to the present.
func (b *Buffer[T]) Close() {
	b.Content.change(b.calendar.now, b.count, b.Capacity)
}
