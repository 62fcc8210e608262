package main

import (
	"slices"

	"github.com/spf13/pflag"

	"dwellcast/reports"
)

// outputFlags are the flags of every command that writes a report.
type outputFlags struct {
	format, output, decimal string
	brief                   bool
}

func (f *outputFlags) add(set *pflag.FlagSet) {
	set.StringVar(&f.format, "format", "", "`format` of the report: table, json, csv, markdown, html or xlsx; else by the ending of the output file")
	set.StringVarP(&f.output, "output", "o", "", "`file` to write the report to, whole or not at all; - is standard output")
	set.StringVar(&f.decimal, "decimal", "point", "decimal `mark` of a CSV: point, or comma with semicolons between fields")
	set.BoolVar(&f.brief, "brief", false, "the answer, what limits, and the warning that belongs to it, in at most ten lines")
}

// open checks the flags, so that a mistake shows before the work and not after it.
func (f *outputFlags) open() (output, error) {
	out, err := newOutput(f.output, f.format)
	if err != nil {
		return out, err
	}
	out.style.Brief = f.brief
	switch f.decimal {
	case "point":
	case "comma":
		out.style.Comma = true
	default:
		return out, usage("write --decimal point or --decimal comma", "--decimal %s is no decimal mark", f.decimal)
	}
	if out.style.Comma && out.format != reports.CSV {
		return out, usage("add --format csv, or leave it out", "--decimal is for CSV")
	}
	if f.brief && slices.Contains([]reports.Format{reports.JSON, reports.CSV, reports.Workbook}, out.format) {
		return out, usage("leave it out, or take another format", "--brief shortens what is read, and %s holds data", out.format)
	}
	return out, nil
}
