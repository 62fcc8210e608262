package main

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"golang.org/x/term"

	"dwellcast/reports"
)

// terminal returns the file behind w if it is a terminal.
func terminal(w any) (*os.File, bool) {
	file, ok := w.(*os.File)
	return file, ok && term.IsTerminal(int(file.Fd()))
}

// styleOf suits a report to what it is written to: the width of a terminal, or 80 columns in plain characters.
func styleOf(w io.Writer) reports.Style {
	style := reports.Style{Width: 80}
	file, ok := terminal(w)
	if !ok {
		return style
	}
	if width, _, err := term.GetSize(int(file.Fd())); err == nil {
		style.Width = width
	}
	style.Bold = os.Getenv("TERM") != "dumb" && os.Getenv("NO_COLOR") == ""
	return style
}

// plain takes the path out of a file error, where the message names it already.
func plain(err error) error {
	if inPath, ok := errors.AsType[*fs.PathError](err); ok {
		return inPath.Err
	}
	if inLink, ok := errors.AsType[*os.LinkError](err); ok {
		return inLink.Err
	}
	return err
}
