package motion

import "math"

// The formulas below are for one move of travel h within an angle of a revolution that is the pace period: its peaks
// grow with the setting, its square and its cube. Travel and limits may be in any unit of length.

// SettingAtPeakVelocity is the setting at which the peak velocity is limit: 10 lanes angle limit/(Cv h).
func SettingAtPeakVelocity(law Law, h float64, angle Degrees, limit float64, lanes int) CartonsPerHour {
	return SettingFor(stretched(Seconds(law.Coefficients().Cv*h/limit), angle), lanes)
}

// SettingAtPeakAcceleration is the setting at which the peak acceleration is limit: 10 lanes angle sqrt(limit/(Ca
// h)).
func SettingAtPeakAcceleration(law Law, h float64, angle Degrees, limit float64, lanes int) CartonsPerHour {
	return SettingFor(stretched(Seconds(math.Sqrt(law.Coefficients().Ca*h/limit)), angle), lanes)
}

// SettingAtPeakJerk is the setting at which the peak jerk is limit: 10 lanes angle (limit/(Cj h))^(1/3). Steps of the
// acceleration are not counted.
func SettingAtPeakJerk(law Law, h float64, angle Degrees, limit float64, lanes int) CartonsPerHour {
	return SettingFor(stretched(Seconds(math.Cbrt(law.Coefficients().Cj*h/limit)), angle), lanes)
}

// SettingAtStand is the setting at which the stand, an angle of a revolution that is the pace period, just lasts
// needed: 10 lanes angle/needed.
func SettingAtStand(stand Degrees, needed Seconds, lanes int) CartonsPerHour {
	return SettingFor(stretched(needed, stand), lanes)
}

// SettingWithFreeSplit is the highest setting when the revolution may be divided freely between an index at its
// acceleration limit and a stand of fixed length: 3600 lanes/(sqrt(Ca h/limit) + fixed).
func SettingWithFreeSplit(law Law, h, limit float64, fixed Seconds, lanes int) CartonsPerHour {
	return SettingFor(Seconds(math.Sqrt(law.Coefficients().Ca*h/limit))+fixed, lanes)
}
