package chart

import "image/color"

// ink is a colour by its job; what it looks like depends on the ground.
type ink int

const (
	none ink = iota
	paper
	text
	muted
	hair // grid lines
	edge // axes and outlines
	blue
	vermillion
	green
	purple
	orange
	sky
	yellow
	grey
	stripe // hatch lines on a coloured fill
	shade  // a pale ground behind part of a chart
	heat0
	heat1
	heat2
	heat3
	heat4
	heat5
	heat6
	heat7
	heat8
	inkCount
)

// heats is the number of inks of a grid, from low to high.
const heats = int(heat8-heat0) + 1

// tones are an ink's colours as 0xRRGGBB.
type tones struct {
	name               string
	light, dark, print uint32
}

// tones of an ink. The eight hues are those of Okabe and Ito (2008), whose black is the text; on a dark ground the darker ones are
// lightened. The inks of a grid are one hue whose lightness runs one way, so that they keep their order in grey.
func (i ink) tones() tones { return palette[i] }

var palette = [inkCount]tones{
	none:       {"none", 0, 0, 0},
	paper:      {"paper", 0xFFFFFF, 0x16191D, 0xFFFFFF},
	text:       {"text", 0x1A1C1F, 0xECEEF0, 0x000000},
	muted:      {"muted", 0x555A61, 0xAEB4BB, 0x333333},
	hair:       {"hair", 0xDDE0E3, 0x343A41, 0xCCCCCC},
	edge:       {"edge", 0x6B7178, 0x8B929A, 0x333333},
	blue:       {"blue", 0x0072B2, 0x4AA8E0, 0x0072B2},
	vermillion: {"vermillion", 0xD55E00, 0xF0803A, 0xD55E00},
	green:      {"green", 0x009E73, 0x1FBF93, 0x009E73},
	purple:     {"purple", 0xCC79A7, 0xDD94BB, 0xCC79A7},
	orange:     {"orange", 0xE69F00, 0xE69F00, 0xE69F00},
	sky:        {"sky", 0x56B4E9, 0x8CCFF5, 0x56B4E9},
	yellow:     {"yellow", 0xF0E442, 0xF0E442, 0xF0E442},
	grey:       {"grey", 0xC4C8CC, 0x969DA5, 0xC4C8CC},
	stripe:     {"stripe", 0x1A1C1F, 0x0B0D0F, 0x000000},
	shade:      {"shade", 0xF0F2F4, 0x22272D, 0xEEEEEE},
	heat0:      {"heat0", 0xF6FAFD, 0x1A222A, 0xF6FAFD},
	heat1:      {"heat1", 0xE0EDF6, 0x1E2D3A, 0xE0EDF6},
	heat2:      {"heat2", 0xCBE0F0, 0x21384A, 0xCBE0F0},
	heat3:      {"heat3", 0xB6D3E9, 0x24425B, 0xB6D3E9},
	heat4:      {"heat4", 0xA0C6E2, 0x284D6B, 0xA0C6E2},
	heat5:      {"heat5", 0x8AB9DC, 0x2C587B, 0x8AB9DC},
	heat6:      {"heat6", 0x75ACD5, 0x2F628C, 0x75ACD5},
	heat7:      {"heat7", 0x609FCF, 0x326D9C, 0x609FCF},
	heat8:      {"heat8", 0x4A92C8, 0x3678AC, 0x4A92C8},
}

// rgb is the ink on a light ground, for files that don't know where they are read.
func (i ink) rgb() color.NRGBA {
	c := i.tones().light
	return color.NRGBA{R: uint8(c >> 16), G: uint8(c >> 8), B: uint8(c), A: 0xFF}
}

// faintness is the opacity of a faint fill.
const faintness = 0.2
