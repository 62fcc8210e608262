package motion

import (
	"fmt"
	"math"
)

// NewSloshLimit holds while the wave stays within the tank's freeboard over as many indexes from rest as a carton makes while it is
// open; with 0 indexes that of endlessly repeated ones. Its margin is the freeboard left, m. The wave is not monotonic in the
// setting, so the limit has Dips: settings in step with a mode of the liquid.
func NewSloshLimit(name string, master Master, conveyor *Cam, tank Tank, indexes int) (Limit, error) {
	var index *camMove
	for i := range conveyor.moves {
		if m := &conveyor.moves[i]; m.travel > 0 && index == nil {
			index = m
		} else if m.travel != 0 {
			return Limit{}, fmt.Errorf("%s: slosh is solved for one index in a revolution", name)
		}
	}
	if index == nil {
		return Limit{}, fmt.Errorf("%s: the conveyor has no index", name)
	}
	if _, problems := NewSlosh(tank, IndexMove{index.law, index.travel, 1, 2}); len(problems) > 0 {
		return Limit{}, fmt.Errorf("%s: %w", name, problems[0])
	}
	w := &sloshLimit{tank, master, index.law, index.travel, Degrees(index.to - index.from), indexes}
	l := Limit{
		Name: name, Kind: SloshLimit, Unit: "m", Margin: w.margin, Dips: w.endlessDips, DipWidth: max(tank.Damping, 1e-4),
		Lift: "more freeboard, a gentler or longer index, or an index time near a node of the residual",
	}
	if indexes > 0 {
		l.Dips, l.DipWidth = w.dips, 0
	}
	l.From, l.To = w.span()
	return l, nil
}

// sloshLimit is a tank on a conveyor, and the number of indexes that it makes from rest; 0: endless ones.
type sloshLimit struct {
	tank    Tank
	master  Master
	law     Law
	travel  float64
	angle   Degrees
	indexes int
}

func (w *sloshLimit) margin(setting CartonsPerHour) float64 {
	s, problems := NewSlosh(w.tank, IndexMove{w.law, w.travel, w.angle.Time(w.master.RevolutionAt(setting)), w.master.CycleAt(setting)})
	if len(problems) > 0 {
		return math.NaN()
	}
	if w.indexes == 0 {
		return w.tank.Freeboard - s.Steady().Peak
	}
	return w.tank.Freeboard - s.highest(w.indexes)
}

// shortestCycle is that of 20,000 cartons/h and lane: no carton line is set faster; common practice, no source.
const shortestCycle Seconds = 0.18

// Where the wave is looked at.
const (
	mostPeriods     = 60 // of the first mode in a cycle: a wave of long ago hardly matters, and lines that slow have no slosh
	mostLooksAtWave = 1500
	looksPerPeriod  = 8
	mostJumps       = 200
)

// span is where the limit is looked at. Its lower end is the setting below which no wave can reach the rim (see surelyStill), unless
// a cycle then lasts longer than so many periods.
func (w *sloshLimit) span() (from, to CartonsPerHour) {
	lanes := w.master.lanes()
	to = SettingFor(shortestCycle, lanes)
	from = SettingFor(min(w.surelyStill(), Seconds(mostPeriods/w.tank.Mode(1).Frequency)), lanes)
	return min(from, to/2), to
}

// surelyStill is a pace period from which on the wave stays below the rim: the answer of a mode to a step of the acceleration is at
// most twice its static one, so that to any acceleration it is at most twice the static answer to its total variation. Infinite
// where the revolution does not follow the pace.
func (w *sloshLimit) surelyStill() Seconds {
	if w.master.Revolution > 0 || w.indexes == 0 {
		return Seconds(math.Inf(1))
	}
	rise := 0.0 // under a constant acceleration of 1 m/s2
	for i := range w.tank.modeCount() {
		m := w.tank.Mode(2*i + 1)
		rise += m.Drive / square(m.Omega())
	}
	index := math.Sqrt(2 * float64(w.indexes) * w.law.variation() * w.travel * rise / w.tank.Freeboard)
	return Seconds(index) / w.angle.Time(w.master.RevolutionAt(SettingFor(1, w.master.lanes())))
}

// variation is the sum of all rises and falls of the law's acceleration, from rest to rest.
func (l Law) variation() float64 {
	sum, last := 0.0, 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		for _, u := range append(append([]float64{0}, p.zeros(3)...), p.width()) {
			a := p.acceleration(u)
			sum, last = sum+math.Abs(a-last), a
		}
	}
	return sum + math.Abs(last)
}
