package chart

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"
)

// Format is a kind of picture file.
type Format string

// The kinds of picture files.
const (
	SVG Format = "svg" // text as text; follows the reader's light or dark ground
	PNG Format = "png" // pixels, two a point, on white
	PDF Format = "pdf" // one page, text as text
)

// Formats lists the kinds in the order in which help shows them.
func Formats() []Format { return []Format{SVG, PNG, PDF} }

// FormatOf tells the kind from the extension of a file's name.
func FormatOf(file string) (Format, error) {
	extension := strings.ToLower(strings.TrimPrefix(filepath.Ext(file), "."))
	for _, f := range Formats() {
		if string(f) == extension {
			return f, nil
		}
	}
	if extension == "" {
		return "", fmt.Errorf("chart file %q has no extension; end its name in .svg, .png or .pdf", file)
	}
	return "", fmt.Errorf("chart file %q: unknown extension %q; end its name in .svg, .png or .pdf", file, "."+extension)
}

// Write writes the drawing. The same drawing gives the same bytes.
func (d *Drawing) Write(w io.Writer, f Format) error {
	switch f {
	case SVG:
		return d.writeSVG(w)
	case PNG:
		return d.writePNG(w)
	case PDF:
		return d.writePDF(w)
	}
	return fmt.Errorf("unknown chart format %q; take svg, png or pdf", f)
}
