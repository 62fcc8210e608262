package chart

import (
	"fmt"
	"strings"
)

// Plan is a drawing of a line: its stations in flow order, with the pitches and buffers between them.
type Plan struct {
	Caption  Caption
	Stations []PlanStation
	// People are words about the line as a whole, such as who clears its stops.
	People string
	// Width of the drawing in points; 0 takes 720.
	Width float64
}

// PlanStation is a station, with what leads to it.
type PlanStation struct {
	Name string
	// Words stand below it, a line each: its kind, what its act takes, what it waits.
	Words []string
	// Units is how many work side by side; several are drawn one behind the other.
	Units int
	// Limits marks what limits the line.
	Limits bool
	// Feed is the way to it.
	Feed PlanFeed
}

// PlanFeed is the way from one station to the next: pitches of a conveyor, or a buffer.
type PlanFeed struct {
	// Pitches of the conveyor that both stand on; 0 for a buffer, or for the head of the line.
	Pitches int
	// Buffered says that a buffer leads here, with room for so many cartons; Unlimited where it has no limit.
	Buffered, Unlimited bool
	Room                int
	// Words stand below the way.
	Words string
}

// Sizes of a plan in points.
const (
	planBox    = 86.0  // width of a station
	planHeight = 34.0  // of a station
	planPitch  = 13.0  // a pitch of a conveyor
	planLeast  = 58.0  // the shortest way drawn, so that its words find room
	planMost   = 168.0 // the longest
)

// Draw lays the line out from left to right, in as many rows as it takes.
func (p Plan) Draw() (*Drawing, error) {
	if len(p.Stations) == 0 {
		return nil, fmt.Errorf("plan %q has no stations", p.Caption.Title)
	}
	d, y := p.Caption.begin(widthOr(p.Width, 720))
	room := p.mostRoom()
	x, deepest := rim, y
	for i, s := range p.Stations {
		way := s.Feed.length(room)
		if i > 0 && x+way+planBox > d.Width-rim {
			x, y = rim, deepest+14
			deepest = y
		}
		if way > 0 {
			deepest = max(deepest, s.Feed.draw(d, x, y+planHeight/2+4, way))
			x += way
		}
		deepest = max(deepest, s.draw(d, x, y+4))
		x += planBox
	}
	d.Description = p.describe()
	y = deepest
	if p.People != "" {
		y = d.block(p.People, small, false, text, y+8)
	}
	return p.Caption.finish(d, y), nil
}

// mostRoom is the largest limited buffer, to whose size the others are drawn.
func (p Plan) mostRoom() int {
	most := 1
	for _, s := range p.Stations {
		if s.Feed.Buffered && !s.Feed.Unlimited {
			most = max(most, s.Feed.Room)
		}
	}
	return most
}

// length is how long a way is drawn.
func (f PlanFeed) length(most int) float64 {
	switch {
	case f.Buffered && f.Unlimited:
		return planMost
	case f.Buffered:
		return planLeast + (planMost-planLeast)*float64(f.Room)/float64(most)
	case f.Pitches > 0:
		return min(max(planLeast, planPitch*float64(f.Pitches)), planMost)
	}
	return 0
}

// draw draws a way whose middle is at a height, and tells how deep its words reach.
func (f PlanFeed) draw(d *Drawing, x, mid, length float64) float64 {
	b := box{x + 3, mid - 7, x + length - 9, mid + 7}
	if f.Buffered {
		fill := filling{shade, rising, text}
		if f.Room == 0 && !f.Unlimited {
			b.y0, b.y1 = mid-2, mid+2
			fill.hatch = plain
		}
		d.fillBox(fill, b, f.Words)
	} else {
		d.fillBox(filling{paper, plain, text}, b, f.Words)
		n := min(f.Pitches, int(b.width()/4))
		for i := 1; i < n; i++ {
			at := b.x0 + b.width()*float64(i)/float64(n)
			d.line(look{line: edge, width: 0.6}, point{at, b.y0}, point{at, b.y1})
		}
	}
	tip := x + length - 1
	d.area(look{fill: text}, point{tip, mid}, point{tip - 7, mid - 4}, point{tip - 7, mid + 4})
	lines := wrap(f.Words, small, false, length-8)
	return d.paragraph(lines, label{at: point{x + (length-6)/2, mid + planHeight/2 + 13}, size: small, anchor: middle, ink: muted}) - capHeight*small
}

// draw draws a station and its words, and tells how deep they reach. What limits has a thick, hatched frame, and says so.
func (s PlanStation) draw(d *Drawing, x, y float64) float64 {
	b := box{x, y, x + planBox, y + planHeight}
	if s.Units > 1 { // one behind says that there are several
		d.rect(look{fill: paper, line: edge, width: 0.8}, box{b.x0 + 4, b.y0 - 4, b.x1 + 4, b.y1 - 4})
	}
	pen, ground := look{line: edge, width: 1.2, fill: paper}, filling{}
	if s.Limits {
		pen.line, pen.width = text, 3
		ground = filling{shade, falling, text}
		pen.fill = shade
	}
	d.rect(pen, b)
	if s.Limits {
		d.hatchArea(ground, box{b.x0 + 2, b.y0 + 2, b.x1 - 2, b.y1 - 2}.corners())
	}
	name := wrap(s.Name, small, true, planBox-10)
	if len(name) > 2 {
		name = []string{name[0], strings.TrimRight(name[1], " ") + "..."}
	}
	first := b.middle().y + capHeight*small/2 - leading*small*float64(len(name)-1)/2
	for i, words := range name {
		l := label{at: point{b.middle().x, first + leading*small*float64(i)}, words: words, size: small, bold: true, anchor: middle, ink: text}
		if s.Limits {
			d.plate(l)
		} else {
			d.write(l)
		}
	}
	below := s.Words
	if s.Limits {
		below = append([]string{"LIMITS THE LINE"}, below...)
	}
	at := label{at: point{b.middle().x, b.y1 + 13}, size: small, anchor: middle, ink: text}
	for i, words := range below {
		at.bold = s.Limits && i == 0
		at.at.y = d.paragraph(wrap(words, small, at.bold, planBox-4), at)
	}
	return at.at.y - capHeight*small
}

func (p Plan) describe() string {
	if p.Caption.Description != "" {
		return p.Caption.Description
	}
	words := "Plan of the line in flow order."
	for i, s := range p.Stations {
		switch f := s.Feed; {
		case i == 0:
		case f.Buffered && f.Unlimited:
			words += " Then a buffer without limit."
		case f.Buffered:
			words += fmt.Sprintf(" Then a buffer for %d.", f.Room)
		case f.Pitches > 0:
			words += fmt.Sprintf(" %d on:", f.Pitches)
		}
		words += " " + s.Name
		if s.Limits {
			words += " (limits the line)"
		}
		words += ": " + strings.Join(s.Words, ", ") + "."
	}
	return words
}
