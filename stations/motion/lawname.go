package motion

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// LawNames are the standard names, in the order in which a person would list them.
func LawNames() []string {
	return []string{
		"simple harmonic", "cycloidal", "polynomial 3-4-5", "polynomial 4-5-6-7", "modified trapezoid", "modified sine",
		"modified sine, 50 % constant velocity", "constant acceleration", "trapezoidal velocity 1/3-1/3-1/3",
		"S-curve 1/3-1/3-1/3, full jerk", "straight line",
	}
}

// LawByName finds a law by its standard name or a usual spelling of it, in any case: "3-4-5 polynomial", "modified
// trapezoidal", "parabolic". Shares follow their law: "trapezoidal velocity 1/4-1/2-1/4" (thirds if left out),
// "S-curve 1/3-1/3-1/3, half jerk" (full, half, third, quarter or "30 %"), "modified sine, 50 % constant velocity".
// The error for an unknown name is an UnknownLawError.
func LawByName(name string) (Law, error) {
	plain := plainLawName(name)
	if law, ok := simpleLaw(plain); ok {
		return law, nil
	}
	if m := cruisingSine.FindStringSubmatch(plain); m != nil {
		percent, _ := strconv.ParseFloat(m[1], 64)
		return ModifiedSineConstantVelocity(percent / 100)
	}
	if m := sharedLaw.FindStringSubmatch(plain); m != nil {
		return lawWithShares(m[1], m[2], m[3])
	}
	return Law{}, UnknownLawError{Name: name, Nearest: nearest(plain, LawNames())}
}

// UnknownLawError says that no motion law has the name, and which name comes nearest.
type UnknownLawError struct{ Name, Nearest string }

func (e UnknownLawError) Error() string {
	return fmt.Sprintf("unknown motion law %q (nearest: %q)", e.Name, e.Nearest)
}

var (
	asides       = regexp.MustCompile(`\([^)]*\)`)
	wordHyphen   = regexp.MustCompile(`([a-z]{2,})-([a-z])`)
	cruisingSine = regexp.MustCompile(`^modified sin(?:e|usoid)(?:al)? (?:with )?(\d+(?:\.\d+)?) ?% (?:of )?constant (?:velocity|speed)$`)
	sharedLaw    = regexp.MustCompile(`^(trapezoidal velocity|trapezoid velocity|trapezoidal|s-curve|s curve)( [\d./]+-[-\d./]+(?: ?%)?)?(.*)$`)
)

// plainLawName drops case, asides in brackets, commas and hyphens between words.
func plainLawName(name string) string {
	s := asides.ReplaceAllString(strings.ToLower(name), " ")
	s = strings.NewReplacer(",", " ", "_", " ", ";", " ", "\u2013", "-").Replace(s)
	s = wordHyphen.ReplaceAllString(s, "$1 $2")
	s = strings.Join(strings.Fields(s), " ")
	for _, tail := range []string{" motion", " law", " curve", " profile"} {
		if s != "s curve" {
			s = strings.TrimSuffix(s, tail)
		}
	}
	return s
}

// simpleLaw are the laws without parameters, by all their usual names.
func simpleLaw(plain string) (Law, bool) {
	switch plain {
	case "simple harmonic", "harmonic", "shm", "cosine":
		return SimpleHarmonic(), true
	case "cycloidal", "cycloid", "inclined sine":
		return Cycloidal(), true
	case "polynomial 3-4-5", "3-4-5 polynomial", "3-4-5", "polynomial 345", "345 polynomial", "345":
		return Polynomial345(), true
	case "polynomial 4-5-6-7", "4-5-6-7 polynomial", "4-5-6-7", "polynomial 4567", "4567 polynomial", "4567":
		return Polynomial4567(), true
	case "modified trapezoid", "modified trapezoidal", "modified trapezoidal acceleration", "modified trapezoid acceleration":
		return ModifiedTrapezoid(), true
	case "modified sine", "modified sinusoid", "modified sinusoidal":
		return ModifiedSine(), true
	case "constant acceleration", "parabolic", "parabola":
		return ConstantAcceleration(), true
	case "straight line", "linear", "constant velocity", "uniform":
		return StraightLine(), true
	}
	return Law{}, false
}

// lawWithShares builds the laws that carry shares of the time in their name.
func lawWithShares(kind, list, rest string) (Law, error) {
	a, b, c, err := parseShares(list)
	if err != nil {
		return Law{}, fmt.Errorf("motion law %q: %w", strings.TrimSpace(kind+list), err)
	}
	rest = strings.TrimSpace(rest)
	if strings.HasPrefix(kind, "trapezoid") {
		if rest != "" {
			return Law{}, UnknownLawError{Name: kind + list + " " + rest, Nearest: "trapezoidal velocity 1/3-1/3-1/3"}
		}
		return TrapezoidalVelocity(a, b, c)
	}
	jerk, ok := jerkShare(rest)
	if !ok {
		return Law{}, fmt.Errorf("motion law \"S-curve\": jerk share %q is not full, half, third, quarter or a percentage", rest)
	}
	return SCurve(a, b, c, jerk)
}

// parseShares reads "1/4-1/2-1/4", "0.25-0.5-0.25" or "25-50-25 %"; nothing means thirds.
func parseShares(list string) (a, b, c float64, err error) {
	list = strings.ReplaceAll(list, " ", "")
	if list == "" {
		return 1. / 3, 1. / 3, 1. / 3, nil
	}
	percent := strings.Contains(list, "%")
	parts := strings.Split(strings.ReplaceAll(list, "%", ""), "-")
	if len(parts) != 3 {
		return 0, 0, 0, fmt.Errorf("want three shares such as 1/4-1/2-1/4, got %q", list)
	}
	var v [3]float64
	for i, part := range parts {
		if v[i], err = parseFraction(part); err != nil {
			return 0, 0, 0, err
		}
		if percent {
			v[i] /= 100
		}
	}
	if sum := v[0] + v[1] + v[2]; math.Abs(sum-1) < 0.002 { // shares written with few digits, as 0.333
		v[0], v[1], v[2] = v[0]/sum, v[1]/sum, v[2]/sum
	}
	return v[0], v[1], v[2], nil
}

func parseFraction(s string) (float64, error) {
	top, bottom, divided := strings.Cut(s, "/")
	n, err := strconv.ParseFloat(top, 64)
	if err != nil || !divided {
		return n, err
	}
	d, err := strconv.ParseFloat(bottom, 64)
	if err == nil && d == 0 {
		err = fmt.Errorf("share %q divides by zero", s)
	}
	return n / d, err
}

func jerkShare(words string) (float64, bool) {
	word := strings.TrimSpace(strings.TrimSuffix(words, "jerk"))
	named := map[string]float64{"": 1, "full": 1, "half": 0.5, "third": 1. / 3, "one third": 1. / 3, "quarter": 0.25, "one quarter": 0.25}
	if share, ok := named[word]; ok {
		return share, true
	}
	number, isPercent := strings.CutSuffix(word, "%")
	share, err := parseFraction(strings.TrimSpace(number))
	if isPercent {
		share /= 100
	}
	return share, err == nil
}
