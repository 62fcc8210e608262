package scenarios

import (
	"os"
	"path/filepath"
	"strings"

	"dwellcast/scenarios/document"
)

// Study is a study file that was read without a mistake: a line, the cases to hold against it, and what a command asks for.
//
//	title: ...
//	line: oat-drink.yaml            # a path from this file, example:NAME, or the line itself
//	cases:
//	  longer dwell: {sealer.dwell: 1.4 s}
//	compare: {smallest: 0.5 %}      # a section for each command that has one
type Study struct {
	// Name is the path, or what stands for it in messages.
	Name  string
	Title string
	// Line is the base, with the overrides of the command line.
	Line *File
	// Cases stand in the order of the file.
	Cases []Case
	// Document is what was read.
	Document *document.Node
}

// A SectionReader reads the section of one command, such as compare: or size:. The study's line and cases are read before; the
// line is nil where it has a mistake. Mistakes go to p, at their place in the file.
type SectionReader func(n *document.Node, s *Study, p *document.Problems)

// sections are the keys of a study that belong to one command each. A section that the command at hand does not read is left alone.
var sections = []string{"compare", "sweep", "pace", "margin", "size", "report"}

// OpenStudy reads the study file at a path; "-" is standard input, and example:NAME an embedded example. Overrides change its
// line. The readers are for the sections of the command at hand. The error is a document.ProblemList with every mistake in the
// study and in its line.
func OpenStudy(path string, overrides []string, readers map[string]SectionReader) (*Study, error) {
	in, err := Load(path)
	if err != nil {
		return nil, err
	}
	return in.Study(overrides, readers)
}

func readStudy(name string, root *document.Node, overrides []string, readers map[string]SectionReader) (*Study, error) {
	s := &Study{Name: name, Document: root}
	var p document.Problems
	f := root.Map(&p)
	s.Title = f.Take("title").Text(&p)
	line, cases := f.Require("line", "oat-drink.yaml"), f.Take("cases")
	s.Line = readBase(line, name, overrides, &p)
	s.readCases(cases, &p)
	for _, key := range sections {
		if n := f.Take(key); n != nil && readers[key] != nil {
			readers[key](n, s, &p)
		}
	}
	f.Done()
	if err := p.Err(); err != nil {
		return nil, err
	}
	if s.Title == "" {
		s.Title = strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	}
	return s, nil
}

// readBase reads the line of a study; nil, and a report, where it has a mistake.
func readBase(n *document.Node, study string, overrides []string, p *document.Problems) *File {
	if n == nil {
		return nil
	}
	if n.Kind() == document.Map {
		file, err := interpret(study, n.Clone(), overrides)
		reportTo(p, err)
		return file
	}
	path := n.Text(p)
	if path == "" {
		return nil
	}
	if !strings.HasPrefix(path, "example:") && !filepath.IsAbs(path) {
		path = filepath.Join(folderOf(study), path)
	}
	root, err := load(path)
	if err != nil {
		for _, problem := range problemsOf(err) {
			if problem.At.Line == 0 { // it is the name that is wrong
				problem = document.Problem{At: n.At(), Path: n.Path(), Text: n.Raw(), Message: "can't be read as the line: " + problem.Message,
					Hint: "a path counts from the folder of the study; " + problem.Hint}
			}
			p.Report(problem)
		}
		return nil
	}
	file, err := interpret(path, root, overrides)
	reportTo(p, err)
	return file
}

// folderOf is the folder that paths in a study count from: its own, or the current one where it comes through a pipe.
func folderOf(study string) string {
	info, err := os.Stat(study)
	if study == "-" || err == nil && !info.Mode().IsRegular() {
		return ""
	}
	return filepath.Dir(study)
}
