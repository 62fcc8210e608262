package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"dwellcast/reports"
)

// output is where and how a command writes its report.
type output struct {
	path   string // empty or "-" for standard output
	format reports.Format
	style  reports.Style
}

// newOutput checks the flags, so that a mistake shows before the work and not after it.
func newOutput(path, format string) (output, error) {
	f, err := formatOf(path, format)
	if err != nil {
		return output{}, err
	}
	o := output{path: path, format: f}
	if o.toStdout() {
		return o, nil
	}
	return o, o.tryFolder()
}

// endings are what the name of a file says of its format.
var endings = map[string]reports.Format{"": reports.Table, ".txt": reports.Table, ".json": reports.JSON, ".csv": reports.CSV, ".md": reports.Markdown,
	".markdown": reports.Markdown, ".html": reports.HTML, ".htm": reports.HTML, ".xlsx": reports.Workbook}

// formatOf is the format asked for, or else the one that the ending of the file names.
func formatOf(path, format string) (reports.Format, error) {
	if format != "" {
		f, err := reports.ParseFormat(format)
		if err != nil {
			return "", &complaint{err, "", badInput}
		}
		return f, nil
	}
	ending := strings.ToLower(filepath.Ext(path))
	if f, known := endings[ending]; known || path == "-" {
		return cmp.Or(f, reports.Table), nil
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return reports.Table, nil
	}
	return "", usage("end it in .txt, .json, .csv, .md, .html or .xlsx, or give --format", "the ending %s of %s names no format", ending, path)
}

func (o output) toStdout() bool { return o.path == "" || o.path == "-" }

// tryFolder finds out whether a file can be written there.
func (o output) tryFolder() error {
	info, err := os.Stat(o.path)
	switch {
	case err == nil && info.IsDir():
		return usage("give a file in it", "can't write %s: it is a directory", o.path)
	case err == nil && !info.Mode().IsRegular():
		return nil
	}
	temporary, err := createBeside(o.path)
	if err != nil {
		return usage("give a folder that exists and may be written to", "can't write %s: %w", o.path, plain(err))
	}
	return discard(temporary)
}

// send makes the report with write and puts it where it belongs: a file is written whole or not at all.
func (p *program) send(o output, write func(io.Writer, reports.Style) error) error {
	var text bytes.Buffer
	style := o.style
	if o.toStdout() {
		screen := styleOf(p.stdout)
		style.Width, style.Bold = screen.Width, screen.Bold
	}
	if err := write(&text, style); err != nil {
		return err
	}
	if o.toStdout() {
		if _, err := p.stdout.Write(text.Bytes()); err != nil {
			return &complaint{fmt.Errorf("can't write the report: %w", plain(err)), "write it to a file with -o", failed}
		}
		return nil
	}
	if err := replaceFile(o.path, text.Bytes()); err != nil {
		return &complaint{fmt.Errorf("can't write %s: %w", o.path, plain(err)), "nothing was left there; try another folder", failed}
	}
	return nil
}

// replaceFile writes a file whole: into a temporary one beside it, which then takes its name. What is no regular file, such as
// a terminal, is written to as it is.
func replaceFile(path string, text []byte) error {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return os.WriteFile(path, text, 0o666)
	}
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	temporary, err := createBeside(path)
	if err != nil {
		return err
	}
	if err := fill(temporary, text); err != nil {
		_ = os.Remove(temporary.Name())
		return err
	}
	if info, err := os.Stat(path); err == nil {
		_ = os.Chmod(temporary.Name(), info.Mode().Perm())
	}
	if err := os.Rename(temporary.Name(), path); err != nil {
		_ = os.Remove(temporary.Name())
		return err
	}
	return nil
}

// createBeside creates a temporary file of a name of its own in the folder of path, and clears away those that a killed run left.
func createBeside(path string) (*os.File, error) {
	folder, pattern := filepath.Dir(path), "."+strings.ReplaceAll(filepath.Base(path), "*", "_")+".*.tmp"
	if left, err := filepath.Glob(filepath.Join(folder, pattern)); err == nil {
		for _, name := range left {
			if info, err := os.Stat(name); err == nil && time.Since(info.ModTime()) > stale {
				_ = os.Remove(name)
			}
		}
	}
	for {
		name := strings.Replace(pattern, "*", strconv.FormatUint(rand.Uint64(), 36), 1)
		file, err := os.OpenFile(filepath.Join(folder, name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return file, err
		}
	}
}

// stale is the age from which a temporary file belongs to nobody any more.
const stale = time.Hour

func fill(file *os.File, text []byte) error {
	_, err := file.Write(text)
	if err == nil {
		err = file.Sync()
	}
	if closing := file.Close(); err == nil {
		err = closing
	}
	return err
}

func discard(file *os.File) error {
	_ = file.Close()
	return os.Remove(file.Name())
}
