package motion

// Law is a normalised motion law: displacement s over the share z of the time, both from 0 to 1, in closed form. It
// is made of pieces on each of which s is a polynomial plus at most one sine, so that peaks, inverses and the
// liquid's answer to it can be had exactly. The zero Law is no law; get one from LawByName or a constructor.
type Law struct{ *lawShape }

// lawShape is what a Law points to, so that a Law is one word to pass on.
type lawShape struct {
	pieces []piece
	name   string
	coef   Coefficients
}

// Motion is displacement and its first three derivatives: of a law by z (no units), of an axis by time.
type Motion struct {
	Position, Velocity, Acceleration, Jerk float64
}

// Name is the standard name, with shares where the law has them.
func (l Law) Name() string {
	if l.IsZero() {
		return ""
	}
	return l.name
}

// String is the name.
func (l Law) String() string { return l.Name() }

// IsZero reports whether l is the zero Law.
func (l Law) IsZero() bool { return l.lawShape == nil }

// piece is the part of the law that holds at z in 0..1.
func (l Law) piece(z float64) *piece {
	pieces := l.pieces
	for i := range pieces {
		if z < pieces[i].to {
			return &pieces[i]
		}
	}
	return &pieces[len(pieces)-1]
}

// Position is s at z; 0 before z = 0 and 1 after z = 1.
func (l Law) Position(z float64) float64 {
	if z <= 0 {
		return 0
	}
	if z >= 1 {
		return 1
	}
	p := l.piece(z)
	return p.position(z - p.from)
}

// Velocity is ds/dz at z in 0..1. At a step it is the value after the step, at z = 1 the value before it.
func (l Law) Velocity(z float64) float64 {
	p := l.piece(z)
	return p.velocity(z - p.from)
}

// Acceleration is d2s/dz2 at z in 0..1. At a step it is the value after the step, at z = 1 the value before it.
func (l Law) Acceleration(z float64) float64 {
	p := l.piece(z)
	return p.acceleration(z - p.from)
}

// Jerk is d3s/dz3 at z in 0..1 within the pieces of the law; a step of the acceleration does not show in it.
func (l Law) Jerk(z float64) float64 {
	p := l.piece(z)
	return p.jerk(z - p.from)
}

// Motion is s and its derivatives at z in 0..1, in one evaluation.
func (l Law) Motion(z float64) Motion {
	p := l.piece(z)
	return p.motion(z - p.from)
}
