package chart

import (
	"strings"
	"unicode"
)

// Heights of a sans-serif font as shares of its size.
const (
	capHeight = 0.73
	descent   = 0.22
)

// slack is what a text may be wider than measured. The viewer's own font sets the SVG, and common ones run up to an eighth wider
// than the measured one.
const slack = 1.12

// advances holds the widths of the characters from space to tilde in thousandths of the size: the metrics of Liberation Sans,
// which are those of most sans-serif fonts on office computers.
var advances = [2][95]uint16{{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}, {
	278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
	975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
	333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
	611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
}}

// textWidth is the room in points that a line of text needs.
func textWidth(words string, size float64, bold bool) float64 {
	face := 0
	if bold {
		face = 1
	}
	sum := 0
	for _, r := range words {
		sum += advance(face, r)
	}
	return float64(sum) / 1000 * size * slack
}

// advance is the width of a character in thousandths of the size; outside of ASCII it errs on the wide side.
func advance(face int, r rune) int {
	switch {
	case r >= ' ' && r <= '~':
		return int(advances[face][r-' '])
	case r == '\u00a0':
		return 278
	case unicode.Is(unicode.Mn, r):
		return 0
	case r >= 0x1100 && unicode.IsOneOf([]*unicode.RangeTable{unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul}, r):
		return 1000
	case unicode.IsUpper(r), unicode.IsSymbol(r) && r > 0xFF:
		return 1000
	case r == '°':
		return 400
	case r > 0x24F:
		return 850
	}
	return 611
}

// wrap breaks words into lines that fit a width. A word wider than that is broken within.
func wrap(words string, size float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(words) {
		if joined := strings.TrimSpace(line + " " + word); textWidth(joined, size, bold) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		pieces := breakWord(word, size, bold, width)
		lines = append(lines, pieces[:len(pieces)-1]...)
		line = pieces[len(pieces)-1]
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// breakWord cuts a word into pieces that fit a width, each of one character at least.
func breakWord(word string, size float64, bold bool, width float64) []string {
	var pieces []string
	piece := ""
	for _, r := range word {
		if piece != "" && textWidth(piece+string(r), size, bold) > width {
			pieces = append(pieces, piece)
			piece = ""
		}
		piece += string(r)
	}
	return append(pieces, piece)
}

// widest is the room that the widest of some lines needs.
func widest(lines []string, size float64, bold bool) float64 {
	w := 0.0
	for _, l := range lines {
		w = max(w, textWidth(l, size, bold))
	}
	return w
}
