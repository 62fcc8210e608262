package main

import (
	"bytes"
	"fmt"

	"github.com/spf13/pflag"

	"dwellcast/reports/chart"
)

// picture is where and as what a chart is drawn; without a path, nowhere.
type picture struct {
	path   string
	format chart.Format
}

// drawer is a chart that can be laid out.
type drawer = chart.Chart

// pictureFlag is the flag of every command that can draw its answer.
type pictureFlag struct{ chart string }

func (f *pictureFlag) add(set *pflag.FlagSet) {
	set.StringVar(&f.chart, "chart", "", "`file` to draw the answer to, .svg, .png or .pdf")
}

// newPicture checks the flag, so that a mistake shows before the work and not after it.
func newPicture(path string) (picture, error) {
	if path == "" {
		return picture{}, nil
	}
	format, err := chart.FormatOf(path)
	if err != nil {
		return picture{}, usage("give a name that ends in .svg, .png or .pdf", "can't draw %s: %w", path, err)
	}
	where := output{path: path}
	return picture{path, format}, where.tryFolder()
}

// draw makes the chart and writes it, whole or not at all.
func (p picture) draw(make func() drawer) error {
	if p.path == "" {
		return nil
	}
	drawing, err := make().Draw()
	if err != nil {
		return &complaint{fmt.Errorf("can't draw %s: %w", p.path, err), "", failed}
	}
	var text bytes.Buffer
	if err := drawing.Write(&text, p.format); err != nil {
		return &complaint{fmt.Errorf("can't draw %s: %w", p.path, err), "", failed}
	}
	if err := replaceFile(p.path, text.Bytes()); err != nil {
		return &complaint{fmt.Errorf("can't write %s: %w", p.path, plain(err)), "nothing was left there; try another folder", failed}
	}
	return nil
}
