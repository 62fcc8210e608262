package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// How soon and how often progress is shown: in place on a terminal; in a log file, which nobody watches, only now and then.
const (
	firstOnTerminal = 500 * time.Millisecond
	everyOnTerminal = 100 * time.Millisecond
	everyInLog      = time.Minute
)

// countsShifts is what progress counts where nothing else is said.
const countsShifts = "shifts"

// progress tells how far long work has come, and never takes back what it told. Into a pipe it says nothing.
type progress struct {
	out      io.Writer
	counts   string
	done     int
	total    int
	terminal bool
	log      bool
	begun    time.Time
	next     time.Time
	shown    bool
}

func newProgress(stderr io.Writer, counts string, now time.Time) *progress {
	p := &progress{out: stderr, counts: counts, begun: now}
	if _, p.terminal = terminal(stderr); p.terminal && dumb() {
		p.terminal, p.log = false, true
	}
	if file, ok := stderr.(*os.File); ok && !p.terminal {
		info, err := file.Stat()
		p.log = p.log || err == nil && info.Mode().IsRegular()
	}
	p.next = now.Add(everyInLog)
	if p.terminal {
		p.next = now.Add(firstOnTerminal)
	}
	return p
}

// tell shows that so many of total are done, if it is time to. Work that turns out longer, or is begun anew, raises the total.
func (p *progress) tell(done, total int, now time.Time) {
	p.done = max(p.done, done)
	p.total = max(p.total, total, p.done)
	if !p.terminal && !p.log || now.Before(p.next) {
		return
	}
	words := fmt.Sprintf("%d of %d %s", p.done, p.total, p.counts)
	if left := remaining(now.Sub(p.begun), p.done, p.total); left > 0 {
		words += fmt.Sprintf(", about %s left", left)
	}
	if p.terminal {
		_, _ = fmt.Fprintf(p.out, "\r\x1b[K%s", words)
		p.shown = true
		p.next = now.Add(everyOnTerminal)
		return
	}
	_, _ = fmt.Fprintln(p.out, "dwellcast: "+words)
	p.next = now.Add(everyInLog)
}

func remaining(elapsed time.Duration, done, total int) time.Duration {
	if done == 0 {
		return 0
	}
	return (elapsed * time.Duration(total-done) / time.Duration(done)).Round(time.Second)
}

// end takes the line off the terminal.
func (p *progress) end() {
	if p.shown {
		_, _ = fmt.Fprint(p.out, "\r\x1b[K")
	}
}
