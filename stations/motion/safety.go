package motion

// SafetyDistance is how far a guard that detects people must stand from the hazard: S = K T + C, m. Speed K of
// approach is m/s, stop the overall time T until the hazard has ceased, supplement C in m. General equation of ISO
// 13855; take K and C from the edition in force, and use the result as no more than a first check: it is no risk
// assessment.
func SafetyDistance(speed float64, stop Seconds, supplement float64) float64 {
	return speed*float64(stop) + supplement
}
