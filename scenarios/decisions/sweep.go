package decisions

import (
	"context"
	"math"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// SweepSpec says what to vary, and what to look at.
type SweepSpec struct {
	Figure Figure
	// Vary is one parameter, or two for a grid.
	Vary []Vary
	// Replications is the number of shifts at each point; 0 takes 100.
	Replications int
	// Confidence of the intervals; 0 takes 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// Sweep is a figure over one or two parameters.
type Sweep struct {
	Title        string
	Figure       Figure
	Vary         []Vary
	Seed         uint64
	Replications int
	Confidence   float64
	// Points go through the first parameter's values, and for each through the second's.
	Points []Point
	// Bend says whether the curve has a knee, and Knee where; nil where it has none.
	Bend Bend
	Knee *Knee
	// Today is the value that the file has of the first parameter; nil where it has none that is a number of its unit.
	Today *Value
	// Target is the wanted number of good cartons a shift in the unit of the figure; not a number where there is none.
	Target float64
	// Fixed says that nothing in the line is left to chance.
	Fixed    bool
	Warnings []scenarios.Warning
}

// Point is the figure at one place.
type Point struct {
	Values []Value
	Figure stats.Interval
	// Holder is who holds most of the bottleneck, HolderShare of it.
	Holder      Holder
	HolderShare float64
	// Refused says which limit the line breaks there; empty where it keeps all.
	Refused string
}

// MostPoints is how many points a sweep may have.
const MostPoints = 10_000

// RunSweep runs the shifts of every point on common random numbers.
func RunSweep(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, seed uint64, spec SweepSpec) (*Sweep, error) {
	spec = spec.withDefaults()
	grid, err := spec.grid()
	if err != nil {
		return nil, err
	}
	s := &sweeping{ctx: ctx, lab: lab, file: f, spec: spec, answer: &Sweep{
		Title: f.Line.Title, Figure: spec.Figure, Vary: spec.Vary, Seed: seed, Replications: spec.Replications,
		Confidence: spec.Confidence, Fixed: isFixed(f.Line), Warnings: f.Cautions(),
	}}
	if err := s.try(grid); err != nil {
		return nil, err
	}
	s.standing()
	s.total = len(grid)
	if s.seeksKnee() {
		s.total += kneePoints
	}
	for _, values := range grid {
		if err := s.point(values); err != nil {
			return nil, err
		}
	}
	err = s.findKnee()
	s.tell(s.total)
	return s.answer, err
}

// kneePoints is about how many points a search for the knee adds.
const kneePoints = 3 * mostLevels

// tell says how far the work is.
func (s *sweeping) tell(done int) {
	if s.spec.Progress != nil {
		s.spec.Progress(min(done, s.total)*s.spec.Replications, s.total*s.spec.Replications)
	}
}

func (s SweepSpec) withDefaults() SweepSpec {
	if s.Replications <= 0 {
		s.Replications = 100
	}
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

// grid lists all points.
func (s SweepSpec) grid() ([][]Value, error) {
	points := [][]Value{nil}
	if len(s.Vary) == 0 || len(s.Vary) > 2 {
		return nil, mistake("give --vary once, or twice for a grid", "%d parameters to vary", len(s.Vary))
	}
	if len(s.Vary) == 2 && s.Vary[0].Path == s.Vary[1].Path {
		return nil, mistake("vary two different ones", "%s is varied twice", s.Vary[0].Path)
	}
	for _, vary := range s.Vary {
		var longer [][]Value
		for _, point := range points {
			for _, v := range vary.Values {
				longer = append(longer, append(append([]Value{}, point...), v))
			}
		}
		points = longer
	}
	if len(points) > MostPoints {
		return nil, mistake("take fewer values", "a grid of %d points, more than %d", len(points), MostPoints)
	}
	return points, nil
}

// sweeping is a sweep under way.
type sweeping struct {
	ctx    context.Context
	lab    *scenarios.Lab
	file   *scenarios.File
	spec   SweepSpec
	answer *Sweep
	places []place // of one parameter, where a knee is looked for

	done, total int // points
}

// standing notes where the line stands today, and what is wanted of it.
func (s *sweeping) standing() {
	if v, err := valueAt(s.file, s.spec.Vary[0].Path); err == nil {
		if x, err := v.In(s.spec.Vary[0].Values[0].Quantity.Unit()); err == nil {
			if today, err := s.valueAt(x); err == nil {
				s.answer.Today = &today
			}
		}
	}
	s.answer.Target = math.NaN()
	if s.file.Target > 0 && s.spec.Figure.Shift != nil && !s.spec.Figure.Share() {
		s.answer.Target = s.spec.Figure.Shift(s.file.Target)
	}
}

// try reads the line at both ends of the grid, so that a mistake shows before the work.
func (s *sweeping) try(grid [][]Value) error {
	if err := needShifts(s.file); err != nil {
		return err
	}
	for _, values := range [][]Value{grid[0], grid[len(grid)-1]} {
		if _, err := s.at(values); err != nil {
			return err
		}
	}
	return nil
}

// needShifts refuses a file that asks for one long run.
func needShifts(f *scenarios.File) error {
	if f.Steady != nil {
		return mistake("give the line a shift instead, such as shift: {length: 8 h}", "%s asks for one long run, but a decision needs independent shifts", f.Name)
	}
	return nil
}

// at is the line at a point.
func (s *sweeping) at(values []Value) (*scenarios.File, error) {
	f := s.file
	for i, v := range values {
		var err error
		if f, err = with(f, s.spec.Vary[i].Path, v); err != nil {
			return nil, err
		}
	}
	return f, nil
}

// point adds a point of the grid to the answer.
func (s *sweeping) point(values []Value) error {
	p, err := s.pointAt(values)
	if err != nil {
		return err
	}
	s.answer.Points = append(s.answer.Points, p.Point)
	if s.seeksKnee() {
		s.places = append(s.places, *s.placeOf(p))
	}
	return nil
}

// tried is a point with the figure shift by shift, where the figure is one of a shift.
type tried struct {
	Point
	shifts []float64
}

// placeOf is a point as a place of the curve.
func (s *sweeping) placeOf(p *tried) *place {
	return &place{x: p.Values[0].Number(), y: average(p.shifts), shifts: p.shifts, holder: p.Holder}
}

// pointAt runs the line at a point.
func (s *sweeping) pointAt(values []Value) (*tried, error) {
	f, err := s.at(values)
	if err != nil {
		return nil, err
	}
	shifts, err := extend(s.ctx, s.lab, f, s.spec.Replications)
	if err != nil {
		return nil, err
	}
	var series []float64
	if of := s.spec.Figure.Shift; of != nil {
		n := s.spec.Replications
		if s.answer.Fixed {
			n = 1
		}
		for _, good := range shifts.Good()[:n] {
			series = append(series, of(good))
		}
	}
	s.done++
	s.tell(s.done)
	forecast := shifts.Forecast()
	holder, share := topHolder(forecast)
	return &tried{Point{values, s.spec.Figure.Of(forecast), holder, share, scenarios.Refusal(f)}, series}, s.lab.Release(f)
}
