package random

// gammaTable holds the gamma quantile as a smooth curve, so that a draw costs
// no more than a lognormal one: the log of (quantile / mean) against the normal
// quantile of p, in pieces of degree 5 that match value, slope and curvature
// at their ends. Within 1e-11 of the solved quantile, relative.
type gammaTable struct {
	law    gammaLaw
	pieces []quintic
}

// The table's range of normal quantiles covers every uniform of a Stream
// (8.21 standard deviations) with pieces a 32nd wide.
const (
	tableEnd    = 8.25
	tableStep   = 1. / 32
	tablePieces = int(2 * tableEnd / tableStep)
)

// quintic holds the coefficients of a polynomial of degree 5 on 0 to 1.
type quintic [6]float64

// knot is a point of the curve with its first and second derivative.
type knot struct{ y, slope, curvature float64 }

func newGammaTable(law gammaLaw) *gammaTable {
	t := &gammaTable{law: law, pieces: make([]quintic, tablePieces)}
	z := -tableEnd
	left := law.knot(z, law.lowestStart(z))
	for i := range t.pieces {
		z = -tableEnd + float64(float64(i+1)*tableStep)
		right := law.knot(z, muladd(tableStep, left.slope, left.y))
		t.pieces[i] = join(left, right, tableStep)
		left = right
	}
	return t
}

// knot solves for the curve at z, starting from a guess.
func (g gammaLaw) knot(z, guess float64) knot {
	below, above := normalTails(z)
	y := g.solve(below, above, guess)
	slope := normalDensity(z) / exp(g.logDensity(y))
	bend := -z - float64(slope*float64(g.shape*(0-expm1(y))))
	return knot{y, slope, float64(slope * bend)}
}

// logRatio returns the log of quantile over mean, 0 < p < 1.
func (t *gammaTable) logRatio(p float64) float64 {
	at := float64((normalQuantile(p) + tableEnd) * (1 / tableStep))
	if !(at >= 0 && at < float64(tablePieces)) {
		return t.law.solve(p, 1-p, t.law.lowestStart(normalQuantile(p)))
	}
	i := int(at)
	return t.pieces[i].at(at - float64(i))
}

func (c *quintic) at(t float64) float64 {
	t2 := float64(t * t)
	high := muladd(t2, muladd(t, c[5], c[4]), muladd(t, c[3], c[2]))
	return muladd(t2, high, muladd(t, c[1], c[0]))
}

// join returns the quintic Hermite piece between two knots that are h apart.
func join(left, right knot, h float64) quintic {
	v, w := float64(h*left.slope), float64(h*right.slope)
	a, b := float64(h*h*left.curvature), float64(h*h*right.curvature)
	rise := right.y - left.y - v - a/2 // still to be made up at the far end,
	turn := w - v - a                  // in value, slope
	bend := b - a                      // and curvature
	return quintic{left.y, v, a / 2,
		float64(10*rise) - float64(4*turn) + bend/2,
		float64(-15*rise) + float64(7*turn) - bend,
		float64(6*rise) - float64(3*turn) + bend/2,
	}
}
