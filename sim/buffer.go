package sim

import (
	"errors"
	"time"
)

// Buffer is a first-in first-out store between processes, such as an accumulating conveyor: it has room for a number of
// items, and an item needs the transit time from its entry before it can be taken. A capacity of zero is a rendezvous:
// each item goes straight from the hand of one process into that of another.
//
// Whoever waits is served in order of arrival, and an item is handed to the longest waiter rather than raced for.
type Buffer[T any] struct {
	calendar *Calendar
	// Capacity is the number of places; negative means unlimited.
	Capacity int
	// Transit is the least time from entry to exit.
	Transit time.Duration

	items   []held[T] // a ring
	first   int
	count   int
	takers  []*waiter[T]
	putters []*waiter[T]
	spare   []*waiter[T]
	granted int // places promised by AwaitRoom to a process that has yet to resume
	Content Content
}

type held[T any] struct {
	item  T
	ready time.Duration
}

type waiter[T any] struct {
	p    *Process
	item T
	want int  // items that a taker needs before it goes on
	hold bool // a putter that brings an item, rather than asking for room
	done bool
	due  bool // a taker, first in line, whose items are in the buffer: it knows when they can be taken
}

// NewBuffer returns an empty buffer on the calendar.
func NewBuffer[T any](c *Calendar, capacity int, transit time.Duration) *Buffer[T] {
	return &Buffer[T]{calendar: c, Capacity: capacity, Transit: transit}
}

// Len is the number of items in the buffer, in transit included.
func (b *Buffer[T]) Len() int { return b.count }

// Coming says that some item in the buffer can't be taken before the given time.
func (b *Buffer[T]) Coming(t time.Duration) bool { return b.count > 0 && b.at(b.count-1).ready >= t }

// Items calls visit for each item in the buffer and in the hand of a process that waits to put one in, first in first.
func (b *Buffer[T]) Items(visit func(T)) {
	for i := range b.count {
		visit(b.at(i).item)
	}
	for _, w := range b.putters {
		if w.hold {
			visit(w.item)
		}
	}
}

// Reset empties the buffer, keeping its memory.
func (b *Buffer[T]) Reset() {
	b.first, b.count, b.granted = 0, 0, 0
	b.takers, b.putters = b.takers[:0], b.putters[:0]
	b.Content = Content{}
}

// CanPut says whether n items could be put in now without waiting.
func (b *Buffer[T]) CanPut(n int) bool {
	return len(b.putters) == 0 && b.fits(n)
}

// fits says whether there is room for n more items.
func (b *Buffer[T]) fits(n int) bool {
	return b.Capacity < 0 || b.count+b.granted+n <= b.Capacity+b.wanted()
}

// CanTake says whether n items could be taken now without waiting.
func (b *Buffer[T]) CanTake(n int) bool {
	if len(b.takers) > 0 {
		return false
	}
	return b.arrived(n)
}

func (b *Buffer[T]) arrived(n int) bool {
	if n <= b.count {
		return b.at(n-1).ready <= b.calendar.now
	}
	return b.Capacity == 0 && b.Transit == 0 && n <= b.count+b.held()
}

// wanted is how many items waiting takers would carry away at once: only they make room beyond a capacity of zero.
func (b *Buffer[T]) wanted() int {
	if b.Capacity != 0 {
		return 0
	}
	n := 0
	for _, w := range b.takers {
		n += w.want
	}
	return n
}

func (b *Buffer[T]) held() int {
	n := 0
	for _, w := range b.putters {
		if w.hold {
			n++
		}
	}
	return n
}

// Put puts the item in, waiting for room with the item in hand.
func (b *Buffer[T]) Put(p *Process, item T) {
	if b.CanPut(1) {
		b.Add(item, 0)
		return
	}
	w := b.queue(&b.putters, p)
	w.item, w.hold = item, true
	b.serveTakers()
	b.await(w)
}

// AwaitRoom waits until n items can be put in; the caller then adds them at once, or calls Decline.
func (b *Buffer[T]) AwaitRoom(p *Process, n int) {
	if b.CanPut(n) {
		return
	}
	w := b.queue(&b.putters, p)
	w.want = n
	b.await(w)
	b.granted -= n
}

// Decline gives up the room that AwaitRoom waited for, to whoever waits next.
func (b *Buffer[T]) Decline() { b.servePutters() }

// Add puts in an item for which there is room; it can be taken after the transit time and delay.
func (b *Buffer[T]) Add(item T, delay time.Duration) {
	b.Content.change(b.calendar.now, b.count, b.Capacity)
	b.push(held[T]{item, b.calendar.now + delay + b.Transit})
	b.Content.Entered++
	if len(b.takers) > 0 {
		b.serveTakers()
	}
}

// Take waits for an item and takes it.
func (b *Buffer[T]) Take(p *Process) T {
	b.Await(p, 1)
	return b.Remove()
}

// Await waits until n items can be taken; the caller then removes them at once.
func (b *Buffer[T]) Await(p *Process, n int) {
	if b.CanTake(n) {
		return
	}
	w := b.queue(&b.takers, p)
	w.want = n
	b.servePutters()
	for !b.arrived(n) || b.takers[0] != w {
		ready := never
		if b.takers[0] == w && n <= b.count {
			ready, w.due = b.at(n-1).ready, true
		}
		p.WaitOrWake(ready)
	}
	b.takers = dequeue(b.takers)
	b.spare = append(b.spare, w)
	b.serveTakers()
}

// Remove takes out the first item, which has arrived, and lets in the next that waits.
func (b *Buffer[T]) Remove() T {
	if b.count == 0 { // straight from the hand of the longest waiting putter
		w := b.putters[0]
		b.accept(w)
		b.Content.Entered++
		b.Content.Waited++
		return w.item
	}
	b.Content.change(b.calendar.now, b.count, b.Capacity)
	if b.at(0).ready < b.calendar.now {
		b.Content.Waited++
	}
	item := b.pop()
	b.servePutters()
	return item
}

// servePutters lets waiting putters in while there is room.
func (b *Buffer[T]) servePutters() {
	for len(b.putters) > 0 {
		w := b.putters[0]
		if !b.fits(max(1, w.want)) {
			return
		}
		b.accept(w)
		if w.hold {
			b.Add(w.item, 0)
		} else {
			b.granted += w.want
		}
	}
}

// serveTakers wakes the longest waiting taker when what it needs is here or on its way, unless it knows.
func (b *Buffer[T]) serveTakers() {
	if len(b.takers) == 0 {
		return
	}
	if w := b.takers[0]; !w.due && (w.want <= b.count || b.arrived(w.want)) {
		w.p.Wake()
	}
}

func (b *Buffer[T]) accept(w *waiter[T]) {
	w.done = true
	b.putters = dequeue(b.putters)
	w.p.Wake()
}

func (b *Buffer[T]) await(w *waiter[T]) {
	for !w.done {
		w.p.Park()
	}
	b.spare = append(b.spare, w)
}

func (b *Buffer[T]) queue(line *[]*waiter[T], p *Process) *waiter[T] {
	var w *waiter[T]
	if n := len(b.spare); n > 0 {
		w, b.spare = b.spare[n-1], b.spare[:n-1]
		*w = waiter[T]{p: p}
	} else {
		w = &waiter[T]{p: p}
	}
	*line = append(*line, w)
	return w
}

func dequeue[T any](line []*waiter[T]) []*waiter[T] {
	copy(line, line[1:])
	return line[:len(line)-1]
}

func (b *Buffer[T]) at(i int) *held[T] {
	i += b.first
	if i >= len(b.items) {
		i -= len(b.items)
	}
	return &b.items[i]
}

// mostHeld is how many items a buffer takes, whatever its capacity: one that only fills would take all the memory there is.
const mostHeld = 2_000_000

// ErrOverfull says that a buffer without limit only fills.
var ErrOverfull = errors.New("a buffer without limit only fills: it holds two million items")

func (b *Buffer[T]) push(h held[T]) {
	if b.count >= mostHeld {
		panic(ErrOverfull)
	}
	if b.count == len(b.items) {
		b.grow()
	}
	b.count++
	*b.at(b.count - 1) = h
}

func (b *Buffer[T]) pop() T {
	item := b.items[b.first].item
	b.first++
	if b.first == len(b.items) {
		b.first = 0
	}
	b.count--
	return item
}

func (b *Buffer[T]) grow() {
	larger := make([]held[T], max(8, 2*len(b.items)))
	for i := range b.count {
		larger[i] = *b.at(i)
	}
	b.items, b.first = larger, 0
}
