package motion

// Jaws are the sealer's, which run on their own time from the moment when the photo-eye sees a carton that stands.
type Jaws struct {
	SensorLag   Seconds // 0 or more
	Close, Open Move    // servo moves of the jaws; the travel of Open is the full opening
	Dwell       Seconds // jaws closed
	ClearAt     float64 // m of opening from which the carton may move; 0: the full opening
}

// Cycle is the time from the carton's stand until the jaws are fully open.
func (j Jaws) Cycle() Seconds { return j.SensorLag + j.Close.Time() + j.Dwell + j.Open.Time() }

// Needed is the time from the carton's stand until the jaws are open as far as ClearAt.
func (j Jaws) Needed() Seconds { return j.SensorLag + j.Close.Time() + j.Dwell + j.untilClear() }

func (j Jaws) untilClear() Seconds {
	if j.ClearAt <= 0 || j.ClearAt >= j.Open.Distance {
		return j.Open.Time()
	}
	return Seconds(j.Open.Law().Inverse(j.ClearAt/j.Open.Distance)) * j.Open.Time()
}

// Opening of the jaws, m, a time after the carton came to a stand.
func (j Jaws) Opening(after Seconds) float64 {
	after -= j.SensorLag
	if closing := j.Close.Time(); after < closing {
		return j.Open.Distance * (1 - j.Close.Law().Position(float64(max(0, after)/closing)))
	}
	return j.opened(after - j.Close.Time() - j.Dwell)
}

// opened is the opening a time after the dwell ended; 0 before.
func (j Jaws) opened(after Seconds) float64 {
	if opening := j.Open.Time(); after < opening {
		return j.Open.Distance * j.Open.Law().Position(float64(max(0, after)/opening))
	}
	return j.Open.Distance
}

// ClearBeforeIndex is the margin of "jaws open before the conveyor moves on", for a stand that lasts stand and ends at the angle
// next. Distance is the opening at that moment beyond ClearAt.
func (j Jaws) ClearBeforeIndex(stand Seconds, next Degrees, revolution Seconds) Margin {
	need := j.ClearAt
	if need <= 0 {
		need = j.Open.Distance
	}
	left := stand - j.Needed()
	distance := j.opened(stand-j.SensorLag-j.Close.Time()-j.Dwell) - need
	return Margin{
		Name: "jaws open before the next index", Angle: left.Angle(revolution), Time: left, Distance: distance,
		AngleAt: next.Within(), DistanceAt: next.Within(),
	}
}
