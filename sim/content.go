package sim

import "time"

// Content is the account of what a buffer held.
type Content struct {
	last time.Duration
	// Integral is the content over time, in items x ns; divided by the time it is the mean content.
	Integral int64
	// Empty and Full are the times without an item and without room.
	Empty, Full time.Duration
	// Entered counts the items put in, Waited those that were not taken at the instant at which they could have been.
	Entered, Waited int64
}

// change closes the time since the last change, in which the buffer held count items.
func (c *Content) change(now time.Duration, count, capacity int) {
	since := now - c.last
	c.last = now
	c.Integral += int64(count) * int64(since)
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
