package chart

import (
	"fmt"
	"math"
	"strconv"
)

// Shares is a chart of how each of several rows divides into the same states: one bar a row.
type Shares struct {
	Caption Caption
	// States are the parts in order, at most twelve.
	States []string
	Rows   []ShareRow
	// Width of the drawing in points; 0 takes 720.
	Width float64
}

// ShareRow is one bar.
type ShareRow struct {
	// Name of the row, for instance a station.
	Name string
	// Shares of the states, each from 0 to 1, summing to 1.
	Shares []float64
	// Mark names what is special about the row, for instance "bottleneck"; may be empty.
	Mark string
}

// Draw lays the chart out: a legend of hatches, then a bar a row, each part with its percentage where there is room.
func (s Shares) Draw() (*Drawing, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	d, y := s.Caption.begin(widthOr(s.Width, 720))
	var samples []sample
	for n, state := range s.States {
		if s.used(n) {
			samples = append(samples, sample{state, func(d *Drawing, b box) { d.fillBox(fillings()[n], b, "") }})
		}
	}
	y = d.legend(samples, rim, d.Width-rim, y) + 2
	var texts, marks []string
	for _, r := range s.Rows {
		texts, marks = append(texts, r.Name), append(marks, r.Mark)
	}
	names := newNameColumn(texts, d.Width)
	right := d.Width - rim - textWidth("100 %", small, false)/2
	if w := widest(marks, small, false); w > 0 {
		right = d.Width - rim - w - 8
	}
	x := scale{0, 1, rim + names.width + 8, right}
	for i, r := range s.Rows {
		h := names.height(i, 28)
		names.draw(d, i, rim+names.width, y+h/2, r.Mark != "")
		s.bar(d, r, x, y+h/2)
		d.write(label{at: point{x.hi + 8, inMiddle(y + h/2)}, words: r.Mark, size: small, ink: text})
		y += h
	}
	d.line(look{line: edge, width: 1}, point{x.lo, y}, point{x.hi, y})
	t := axisTicks{values: []float64{0, 0.2, 0.4, 0.6, 0.8, 1}, words: []string{"0 %", "20 %", "40 %", "60 %", "80 %", "100 %"}}
	y = d.xAxis(t, x, y, "")
	d.Description = s.describe()
	return s.Caption.finish(d, y), nil
}

// used says whether any row spends visible time in a state.
func (s Shares) used(state int) bool {
	for _, r := range s.Rows {
		if r.Shares[state] > 0 {
			return true
		}
	}
	return false
}

func (s Shares) check() error {
	if len(s.Rows) == 0 || len(s.States) == 0 || len(s.States) > len(fillings()) {
		return fmt.Errorf("shares need a row and between 1 and %d states, not %d rows of %d states", len(fillings()), len(s.Rows), len(s.States))
	}
	for _, r := range s.Rows {
		if len(r.Shares) != len(s.States) {
			return fmt.Errorf("row %q has %d shares for %d states", r.Name, len(r.Shares), len(s.States))
		}
		sum := 0.0
		for n, v := range r.Shares {
			if !(v >= -1e-9 && v <= 1+1e-9) {
				return fmt.Errorf("row %q: share of %s is %g; it must be between 0 and 1", r.Name, s.States[n], v)
			}
			sum += v
		}
		if math.Abs(sum-1) > 1e-6 {
			return fmt.Errorf("shares of row %q sum to %g instead of 1", r.Name, sum)
		}
	}
	return nil
}

// bar draws the parts of a row side by side.
func (s Shares) bar(d *Drawing, r ShareRow, x scale, mid float64) {
	at := 0.0
	for n, v := range r.Shares {
		b := box{x.at(at), mid - 10, x.at(at + v), mid + 10}
		at += v
		if b.width() < 0.05 {
			continue
		}
		f := fillings()[n]
		d.fillBox(f, b, fmt.Sprintf("%s, %s: %s", r.Name, s.States[n], percent(v)))
		l := label{at: point{b.middle().x, inMiddle(mid)}, words: percent(v), size: small, anchor: middle, ink: f.words}
		if textWidth(l.words, small, false)+8 > b.width() {
			continue
		}
		if f.words == none {
			l.ink = text
			d.plate(l)
			continue
		}
		d.write(l)
	}
}

// percent writes a share with one decimal below ten percent and none above.
func percent(share float64) string {
	decimals := 0
	if share > 0 && share < 0.0005 {
		return "<0.1 %"
	}
	if share < 0.0995 {
		decimals = 1
	}
	return strconv.FormatFloat(100*share, 'f', decimals, 64) + " %"
}

func (s Shares) describe() string {
	if s.Caption.Description != "" {
		return s.Caption.Description
	}
	words := "Bars of state shares."
	for _, r := range s.Rows {
		words += " " + r.Name + ":"
		for n, v := range r.Shares {
			if v > 0 {
				words += fmt.Sprintf(" %s %s,", s.States[n], percent(v))
			}
		}
		words = words[:len(words)-1] + "."
	}
	return words
}
