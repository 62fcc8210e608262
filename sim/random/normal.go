package random

import "math"

// normalQuantile returns the standard normal quantile by algorithm AS 241,
// routine PPND16 (Wichura 1988); relative accuracy about 1e-16.
func normalQuantile(p float64) float64 {
	q := p - 0.5
	if q >= -0.425 && q <= 0.425 {
		r := 0.180625 - float64(q*q)
		return q * poly7(r, &central[0]) / poly7(r, &central[1])
	}
	if q < 0 {
		return -normalUpperTail(p)
	}
	return normalUpperTail(1 - p)
}

// normalUpperTail returns z such that a standard normal exceeds it with
// probability p, for p below 0.075.
func normalUpperTail(p float64) float64 {
	r := math.Sqrt(-log(p))
	switch {
	case math.IsInf(r, 1):
		return r
	case r <= 5:
		return poly7(r-1.6, &middle[0]) / poly7(r-1.6, &middle[1])
	}
	return poly7(r-5, &far[0]) / poly7(r-5, &far[1])
}

// poly7 evaluates a polynomial of degree 7, lowest coefficient first.
func poly7(x float64, c *[8]float64) float64 {
	x2 := float64(x * x)
	x4 := float64(x2 * x2)
	low := muladd(x2, muladd(x, c[3], c[2]), muladd(x, c[1], c[0]))
	high := muladd(x2, muladd(x, c[7], c[6]), muladd(x, c[5], c[4]))
	return muladd(x4, high, low)
}

// Numerators and denominators of AS 241 (Wichura 1988; coefficients from
// memory, checked in the tests against an independent inverse).
var (
	central = [2][8]float64{{
		3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
		4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3,
	}, {
		1, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
		2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4, 5.2264952788528545610e3,
	}}
	middle = [2][8]float64{{
		1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
		1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4,
	}, {
		1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
		1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9,
	}}
	far = [2][8]float64{{
		6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0, 2.96560571828504891230e-1,
		2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
	}, {
		1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
		7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15,
	}}
)
