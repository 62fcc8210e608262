package scenarios

import "dwellcast/stations"

// Production is what the indicators of ISO 22400-2 (2014) are worked out from. Times and the ideal run time per carton are in
// one unit, quantities in cartons.
type Production struct {
	PlannedBusy      float64 // PBT: scheduled time less planned stops
	ActualProduction float64 // APT: planned busy time less stops and waits for material
	PerCarton        float64 // PRI: planned run time per item
	Produced, Good   float64 // PQ and GQ
}

// Indicators are shares of 1, by the formulas of ISO 22400-2 (as transcribed in an open ontology; the standard was not seen):
// availability = APT/PBT, effectiveness = PRI x PQ/APT, quality ratio = GQ/PQ, and their product, the OEE index = GQ x PRI/PBT.
type Indicators struct {
	Availability, Effectiveness, Quality, OEE float64
}

// Indicators works them out; a zero time or quantity gives zeros.
func (p Production) Indicators() Indicators {
	var i Indicators
	if p.PlannedBusy > 0 {
		i.Availability = p.ActualProduction / p.PlannedBusy
		i.OEE = p.Good * p.PerCarton / p.PlannedBusy
	}
	if p.ActualProduction > 0 {
		i.Effectiveness = p.PerCarton * p.Produced / p.ActualProduction
	}
	if p.Produced > 0 {
		i.Quality = p.Good / p.Produced
	}
	return i
}

// TechnicalEfficiency is APT/(APT+ADET), with the actual unit delay time ADET in the same unit (ISO 22400-2).
func TechnicalEfficiency(actualProduction, delay float64) float64 {
	return actualProduction / (actualProduction + delay)
}

// production reads the loss sheet in cartons at the pace, so that one carton is the unit of time: what is lost to planned
// stops is not planned busy time, and what is lost to stops and reloads is not production time.
func (s *sample) production(ideal float64) Production {
	n := float64(len(s.good))
	p := Production{PlannedBusy: ideal, PerCarton: 1}
	down := 0.0
	for r, cause := range s.sim.Causes() {
		switch cause.Kind {
		case stations.PlannedStop:
			p.PlannedBusy -= float64(s.losses[r]) / n
		case stations.Stoppage, stations.MissStop, stations.Reload:
			down += (float64(s.losses[r]) - s.total.Gone[r]) / n
		}
	}
	p.ActualProduction = p.PlannedBusy - down
	p.Good = float64(s.total.Flow[stations.Good]) / n
	p.Produced = p.Good + float64(s.total.Flow[stations.Bad])/n
	return p
}
