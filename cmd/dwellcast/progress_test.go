package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"
)

func TestProgressInPlaceOnTerminal(t *testing.T) {
	var out bytes.Buffer
	begun := time.Unix(0, 0)
	p := &progress{out: &out, counts: countsShifts, terminal: true, begun: begun, next: begun.Add(firstOnTerminal)}
	p.tell(10, 1000, begun.Add(400*time.Millisecond))
	if out.Len() > 0 {
		t.Errorf("short work shows %q", out.String())
	}
	p.tell(100, 1000, begun.Add(time.Second))
	p.tell(101, 1000, begun.Add(time.Second+10*time.Millisecond))
	if got, want := out.String(), "\r\x1b[K100 of 1000 shifts, about 9s left"; got != want {
		t.Errorf("shows %q, want %q", got, want)
	}
	p.end()
	if !strings.HasSuffix(out.String(), "\r\x1b[K") {
		t.Errorf("the line is left standing: %q", out.String())
	}
}

func TestProgressInLogIsSparse(t *testing.T) {
	var out bytes.Buffer
	begun := time.Unix(0, 0)
	p := &progress{out: &out, counts: countsShifts, log: true, begun: begun, next: begun.Add(everyInLog)}
	for second := range 150 {
		p.tell(second+1, 300, begun.Add(time.Duration(second+1)*time.Second))
	}
	p.end()
	want := "dwellcast: 60 of 300 shifts, about 4m0s left\ndwellcast: 120 of 300 shifts, about 3m0s left\n"
	if out.String() != want {
		t.Errorf("log holds %q, want %q", out.String(), want)
	}
}

func TestNoProgressInPipe(t *testing.T) {
	var out bytes.Buffer
	p := newProgress(&out, countsShifts, time.Unix(0, 0))
	p.tell(1, 2, time.Unix(10_000, 0))
	p.end()
	if out.Len() > 0 {
		t.Errorf("a pipe gets %q", out.String())
	}
}

// What was told is never taken back, however work is counted.
func TestProgressNeverRunsBackwards(t *testing.T) {
	var out bytes.Buffer
	begun := time.Unix(0, 0)
	p := &progress{out: &out, counts: countsShifts, terminal: true, begun: begun}
	for i, step := range [][2]int{{10, 100}, {50, 100}, {20, 100}, {60, 80}, {70, 300}, {400, 300}} {
		p.tell(step[0], step[1], begun.Add(time.Duration(i+1)*time.Second))
	}
	done, total := 0, 0
	for _, words := range strings.Split(out.String(), "\r\x1b[K")[1:] {
		var d, n int
		if _, err := fmt.Sscanf(words, "%d of %d shifts", &d, &n); err != nil {
			t.Fatalf("%q: %v", words, err)
		}
		if d < done || n < total || d > n {
			t.Errorf("%d of %d after %d of %d", d, n, done, total)
		}
		done, total = d, n
	}
	if done != 400 {
		t.Errorf("ends at %d", done)
	}
}
