package random

import (
	"fmt"
	"math"
)

// constant is one value only.
type constant struct{ value float64 }

// Constant returns the law that always gives x (>= 0).
func Constant(x float64) (Distribution, error) {
	if err := nonNegative("constant", "value", x); err != nil {
		return nil, err
	}
	return constant{x}, nil
}

func (d constant) Quantile(float64) float64 { return d.value }
func (d constant) Mean() float64            { return d.value }
func (d constant) Variance() float64        { return 0 }
func (d constant) String() string           { return fmt.Sprintf("constant(%g)", d.value) }

// uniform is flat between low and high.
type uniform struct{ low, high float64 }

// Uniform returns the law that is flat from low to high, 0 <= low <= high.
func Uniform(low, high float64) (Distribution, error) {
	if err := first(nonNegative("uniform", "low", low), nonNegative("uniform", "high", high),
		ordered("uniform", "low", low, "high", high)); err != nil {
		return nil, err
	}
	return &uniform{low, high}, nil
}

func (d *uniform) Quantile(p float64) float64 {
	if p >= 1 {
		return d.high
	}
	return min(d.high, d.low+float64(p*(d.high-d.low)))
}
func (d *uniform) Mean() float64     { return d.low + (d.high-d.low)/2 }
func (d *uniform) Variance() float64 { return (d.high - d.low) * (d.high - d.low) / 12 }
func (d *uniform) String() string    { return fmt.Sprintf("uniform(low %g, high %g)", d.low, d.high) }

// triangular rises from low to likely and falls to high.
type triangular struct{ low, likely, high float64 }

// Triangular returns the law whose density rises in a straight line from low
// to likely and falls to high, 0 <= low <= likely <= high.
func Triangular(low, likely, high float64) (Distribution, error) {
	const law = "triangular"
	if err := first(nonNegative(law, "low", low), nonNegative(law, "likely", likely), nonNegative(law, "high", high),
		ordered(law, "low", low, "likely", likely), ordered(law, "likely", likely, "high", high)); err != nil {
		return nil, err
	}
	return &triangular{low, likely, high}, nil
}

func (d *triangular) Quantile(p float64) float64 {
	width, rise := d.high-d.low, d.likely-d.low
	if float64(p*width) < rise {
		return d.low + math.Sqrt(float64(float64(p*width)*rise))
	}
	return d.high - math.Sqrt(float64(float64((1-p)*width)*(d.high-d.likely)))
}

func (d *triangular) Mean() float64 { return d.likely + (d.low-d.likely+d.high-d.likely)/3 }

func (d *triangular) Variance() float64 {
	rise, fall := d.likely-d.low, d.high-d.likely
	return (float64(rise*rise) + float64(rise*fall) + float64(fall*fall)) / 18
}

func (d *triangular) String() string {
	return fmt.Sprintf("triangular(low %g, likely %g, high %g)", d.low, d.likely, d.high)
}

// ordered reports two parameters in the wrong order.
func ordered(law, lowName string, low float64, highName string, high float64) error {
	if low > high {
		return fmt.Errorf("%s: %s %g is above %s %g; swap them or correct one", law, lowName, low, highName, high)
	}
	return nil
}
