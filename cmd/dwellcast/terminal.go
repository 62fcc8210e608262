package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"strconv"

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
	style := reports.Style{Width: columnsOf(w)}
	if _, ok := terminal(w); ok {
		style.Bold = !dumb() && os.Getenv("NO_COLOR") == ""
	}
	return style
}

// columnsOf is the width that COLUMNS asks for, or else that of the terminal; 0 where there is neither.
func columnsOf(w any) int {
	if width, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && width > 0 {
		return width
	}
	if file, ok := terminal(w); ok {
		if width, _, err := term.GetSize(int(file.Fd())); err == nil {
			return width
		}
	}
	return 0
}

// dumb says that the terminal can't set bold, or write over a line.
func dumb() bool { return os.Getenv("TERM") == "dumb" }

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
