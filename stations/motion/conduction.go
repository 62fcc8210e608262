package motion

import "math"

// PlaneWall is a slab that was at one temperature throughout and whose two faces are suddenly heated alike, or, which
// is the same, half such a slab with its other face insulated. Sources: Carslaw and Jaeger, Conduction of Heat in
// Solids (1959), 3.3, 3.11; Incropera et al., Fundamentals of Heat and Mass Transfer, 5.5.
type PlaneWall struct {
	// Biot is h l/k: contact conductance h (W/m2K) x half thickness l (m) / conductivity k (W/mK). More than 0;
	// infinite for perfect contact, where the faces take on the jaw's temperature at once.
	Biot float64
}

// Root is the n-th root (n = 1, 2, ...) of z tan z = Biot, which lies in ((n-1) pi, (n-1/2) pi].
func (w PlaneWall) Root(n int) float64 {
	hi := (float64(n) - 0.5) * math.Pi
	if math.IsInf(w.Biot, 1) {
		return hi
	}
	f := func(z float64) float64 { return z*math.Sin(z) - w.Biot*math.Cos(z) }
	return root(f, float64(n-1)*math.Pi, hi, 0)
}

// Coefficient is the share C_n = 4 sin z/(2 z + sin 2z) of the n-th term of the series.
func (w PlaneWall) Coefficient(n int) float64 {
	z := w.Root(n)
	return 4 * math.Sin(z) / (2*z + math.Sin(2*z))
}

// Remaining is the share of the initial temperature difference that is left, 0..1, at the depth x (0 at the middle or
// the insulated face, 1 at the heated one) and Fourier number fo = diffusivity x time/l2 (0 or more): sum of C_n
// exp(-z_n2 fo) cos(z_n x).
func (w PlaneWall) Remaining(fo, x float64) float64 {
	if fo <= earlyFourier {
		return w.remainingEarly(fo, x)
	}
	sum := 0.0
	for n := 1; ; n++ {
		z := w.Root(n)
		decay := z * z * fo
		if decay > 45 { // exp(-45) is below a rounding error of 1
			return sum
		}
		sum += 4 * math.Sin(z) / (2*z + math.Sin(2*z)) * math.Exp(-decay) * math.Cos(z*x)
	}
}

// earlyFourier is the Fourier number up to which the heat has not reached the middle: erfc(1/(2 sqrt fo)) is below
// 1e-21 there, so each face is that of a half-space.
const earlyFourier = 0.005

// remainingEarly is the half-space solution: Carslaw and Jaeger (1959), 2.5 and 2.7.
func (w PlaneWall) remainingEarly(fo, x float64) float64 {
	if fo <= 0 {
		return 1
	}
	depth := 1 - x
	eta := depth / (2 * math.Sqrt(fo))
	if math.IsInf(w.Biot, 1) {
		return math.Erf(eta)
	}
	b := w.Biot * math.Sqrt(fo)
	return math.Erf(eta) + math.Exp(-eta*eta)*scaledErfc(eta+b)
}

// scaledErfc is exp(x2) erfc(x) for x of 0 or more; by its continued fraction (Laplace) where the plain product would
// overflow.
func scaledErfc(x float64) float64 {
	if x < 5 {
		return math.Exp(x*x) * math.Erfc(x)
	}
	f := x
	for k := 60; k >= 1; k-- {
		f = x + float64(k)/2/f
	}
	return 1 / (f * math.Sqrt(math.Pi))
}

// HalfSpaceReached is the share of the face's temperature step that has come to a depth (m) of a body without end a
// time after its face was heated, for a diffusivity in m2/s: erfc(depth/(2 sqrt(diffusivity time))).
func HalfSpaceReached(depth, diffusivity float64, time Seconds) float64 {
	return math.Erfc(depth / (2 * math.Sqrt(diffusivity*float64(time))))
}
