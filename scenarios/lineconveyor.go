package scenarios

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// Travel is how an indexing conveyor moves in its index.
type Travel struct {
	// Pitch is the distance that an index moves, in metres; 0 where the file does not say.
	Pitch float64
	// Shared says that the index takes a share of the master's revolution, between the angles From and To in degrees;
	// otherwise it takes a time of its own.
	Shared   bool
	From, To float64
	// Law is the name of the motion law; empty where the file does not say.
	Law string
}

// layConveyors finds which stations share an indexing conveyor, and reads it.
func (r *lineReader) layConveyors(common *document.Node) {
	used := false
	for first := 0; first < len(r.drafts); {
		last := first
		for last+1 < len(r.drafts) && r.drafts[last+1].byPitches {
			last++
			r.refuseOwn(r.drafts[last])
		}
		section := r.drafts[first : last+1]
		own := section[0].own
		trivial := len(r.drafts) == 1 && common != nil
		switch {
		case own == nil && len(section) == 1 && !trivial:
		case own != nil:
			r.layConveyor(own, section, last+1 < len(r.drafts))
		case common != nil:
			used = true
			r.layConveyor(common, section, last+1 < len(r.drafts))
		default:
			r.p.Report(document.Problem{At: section[1].node.At(), Path: section[1].node.Path(), Text: "pitches",
				Message: "is given, but no conveyor", Hint: "add conveyor: {index: 0.6 s} at the top of the file"})
		}
		first = last + 1
	}
	if common != nil && !used {
		r.readConveyor(common)
		r.warn("conveyor", "no station stands on the conveyor: none is linked to the one before it by pitches")
	}
}

func (r *lineReader) refuseOwn(d *draft) {
	if d.own != nil {
		r.p.Add(d.own, "stands at a station in the middle of a conveyor", "put it at the first station of that conveyor, or at the top of the file")
	}
}

// layConveyor puts the stations of a section on a conveyor.
func (r *lineReader) layConveyor(n *document.Node, section []*draft, onward bool) {
	conveyor, travel, moves := r.readConveyor(n)
	switch {
	case !onward:
		conveyor.RunOut = 0 // cartons leave the line at the last station
	case !n.Has("run_out"):
		conveyor.RunOut = 1
	}
	for _, d := range section {
		d.Feed.Conveyor = len(r.line.Conveyors)
	}
	if n.Has("runs_empty") && section[0] == r.drafts[0] && conveyor.RunsEmpty && section[0].own != nil {
		r.p.Add(n, "runs empty, but it stands at the head of the line", "take runs_empty out; the head of a line never lacks material")
	}
	if b := section[0].Feed.Buffer; b != nil && b.Capacity == 0 && conveyor.RunsEmpty && n.Has("runs_empty") {
		r.p.Add(n, "runs empty behind a buffer without a place, so that it never waits for what is handed to it", "give the buffer places, or take runs_empty out")
	}
	r.line.Conveyors = append(r.line.Conveyors, conveyor)
	r.file.Travels = append(r.file.Travels, travel)
	r.file.Mechanics.Conveyors = append(r.file.Mechanics.Conveyors, moves)
}

// readConveyor reads an indexing conveyor: its times, its travel, and how it is driven.
func (r *lineReader) readConveyor(n *document.Node) (stations.Conveyor, Travel, ConveyorMotion) {
	f := n.Map(&r.p)
	var c stations.Conveyor
	var travel Travel
	travel.Pitch = f.Take("pitch").Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "5 m"})
	revolution := f.Take("revolution")
	turn, share := r.readRevolution(revolution)
	c.Revolution = turn
	c.Index = r.readIndex(f.Require("index", "0.6 s"), revolution, c.Revolution, &travel)
	if release := f.Take("release"); release.OneOf(&r.p, "when clear", "at cam zero") == "at cam zero" {
		c.Release = stations.AtCamZero
		if revolution == nil {
			r.p.Add(release, "needs a master that turns", "add revolution: 2 s")
		}
	}
	c.RunOut = f.Take("run_out").Count(&r.p, document.Limit{Max: fmt.Sprint(mostPitches)})
	c.RunsEmpty = f.Take("runs_empty").Bool(&r.p)
	moves := r.readConveyorMotion(f, c, travel, share)
	f.Done()
	return c, travel, moves
}

// readRevolution reads the time of a master's turn: a time, the word pace for the pace period of the setting, or a share of it,
// which is then more than 0.
func (r *lineReader) readRevolution(n *document.Node) (turn time.Duration, share float64) {
	if n == nil || !strings.HasSuffix(n.Raw(), "pace") {
		return n.PositiveDuration(&r.p, document.Limit{Min: "10 ms"}, document.Limit{Max: "10 min"}), 0
	}
	share = 1
	if n.Raw() != "pace" {
		share = r.readShareOfPace(n)
	}
	if r.line.Setting == 0 && !r.groundless {
		r.p.Add(n, "needs a setting to take its pace from", "add setting: 1450 cartons/h, or write revolution: 2 s")
	}
	return time.Duration(float64(share*float64(r.line.Pace())) + 0.5), share
}

// readShareOfPace reads "80 % of pace" or "0.8 of pace".
func (r *lineReader) readShareOfPace(n *document.Node) float64 {
	const hint = "write revolution: pace, 80 % of pace, or a time such as 2 s"
	share, ok := shareOf("pace", n.Raw())
	switch {
	case !ok:
		r.p.Add(n, "is neither a time nor a share of the pace", hint)
		return 1
	case share >= 0.05 && share <= 1:
		return share
	}
	r.p.Add(n, "is no share from 5 % to 100 %", "a revolution can't outlast the pace period, nor end at once")
	return 1
}

// shareOf reads "80 % of pace", "0.8 of pace" or "pace"; ok is false for anything else.
func shareOf(whole, text string) (share float64, ok bool) {
	if text == whole {
		return 1, true
	}
	words, ok := strings.CutSuffix(text, " of "+whole)
	if !ok {
		return 0, false
	}
	if _, err := quantity.Number(words); err == nil {
		words += " fraction"
	}
	q, err := quantity.ParseAs(words, quantity.Ratio)
	if err != nil {
		return 0, false
	}
	share, _ = q.Ratio()
	return share, true
}

// readIndex reads the moving part of a cycle: a time, or an arc of the master's revolution.
func (r *lineReader) readIndex(n, revolution *document.Node, turn time.Duration, travel *Travel) time.Duration {
	if !n.Has("from") && !n.Has("to") {
		index := n.Duration(&r.p, document.Limit{Max: "1 min"})
		if turn > 0 && index >= turn {
			r.p.Add(n.Assumed(&r.p), "is not shorter than the revolution of "+quantity.FormatDuration(turn), "the conveyor must stand for the rest of it")
		}
		return index
	}
	f := n.Map(&r.p)
	from := f.Require("from", "0 deg")
	to := f.Require("to", "110 deg")
	within := []document.Limit{{Min: "0 deg", Hint: "write an angle from 0 deg to 360 deg"}, {Max: "360 deg", Hint: "write an angle from 0 deg to 360 deg"}}
	travel.Shared, travel.From, travel.To = true, from.Angle(&r.p, within...), to.Angle(&r.p, within...)
	travel.Law = r.readMotionLaw(f.Take("law"))
	f.Done()
	arc := travel.To - travel.From
	switch {
	case from == nil || to == nil:
	case arc <= 0:
		r.p.Add(to.Assumed(&r.p), "is not beyond the start of the index", "write from before to, as in {from: 0 deg, to: 110 deg}")
	case arc >= 360:
		r.p.Add(to.Assumed(&r.p), "leaves no part of the revolution to stand", "write less than 360 deg from start to end")
	case revolution == nil:
		r.p.Add(n, "is an arc of a revolution, but there is none", "add revolution: 2 s, or give the index as a time")
	}
	return time.Duration(math.Round(float64(float64(turn)*arc) / 360))
}

// readMotionLaw reads the name of a motion law.
func (r *lineReader) readMotionLaw(n *document.Node) string {
	name := n.Text(&r.p)
	if name == "" {
		return ""
	}
	_, err := motion.LawByName(name)
	if unknown, ok := errors.AsType[motion.UnknownLawError](err); ok {
		r.p.Add(n, "is no motion law", "did you mean "+unknown.Nearest+"?")
	} else if err != nil {
		r.p.Add(n, err.Error(), "write for example modified sine")
	}
	return name
}
