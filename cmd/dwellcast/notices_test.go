package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// linked is a module that a binary carries.
type linked struct{ Path, Version, Dir string }

// TestNoticesCoverTheBinary: whoever is given the program is given the licence of every module in it, word for word. -update writes
// them anew, for all systems.
func TestNoticesCoverTheBinary(t *testing.T) {
	if *update {
		writeNotices(t)
	}
	modules := modulesOf(t, runtime.GOOS)
	if len(modules) < 10 {
		t.Fatalf("only %d modules found", len(modules))
	}
	for _, m := range modules {
		if !strings.Contains(notices, "\n"+m.heading()+"\n") {
			t.Errorf("%s is not named", m.heading())
		}
		texts := m.licences(t)
		if len(texts) == 0 {
			t.Errorf("%s has no licence", m.Path)
		}
		for _, text := range texts {
			if !strings.Contains(notices, text) {
				t.Errorf("a licence of %s is missing, or not word for word", m.Path)
			}
		}
	}
	if !strings.Contains(notices, "\n"+standardLibrary+"\n") {
		t.Error("the standard library is not named")
	}
}

const standardLibrary = "the standard library of Go"

// heading is the line under which the licences of a module stand.
func (m linked) heading() string { return m.Path + " " + m.Version }

// modulesOf lists the modules linked into the program for a system.
func modulesOf(t *testing.T, system string) []linked {
	t.Helper()
	list := exec.Command("go", "list", "-deps", "-f", `{{with .Module}}{{if not .Main}}{"Path":"{{.Path}}","Version":"{{.Version}}","Dir":{{printf "%q" .Dir}}}{{end}}{{end}}`, ".")
	list.Env = append(os.Environ(), "GOOS="+system)
	out, err := list.Output()
	if err != nil {
		t.Skipf("go list: %v", err)
	}
	seen := map[linked]bool{}
	var modules []linked
	for read := json.NewDecoder(bytes.NewReader(out)); ; {
		var m linked
		err := read.Decode(&m)
		if errors.Is(err, io.EOF) {
			return modules
		}
		if err != nil {
			t.Fatal(err)
		}
		if !seen[m] {
			seen[m] = true
			modules = append(modules, m)
		}
	}
}

var (
	licenceFile   = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)`)
	licenceFolder = regexp.MustCompile(`(?i)licen[cs]es$`)
)

// licences are the texts that come with a module. Where it may be had under one of several, the GNU licence is not the one taken.
func (m linked) licences(t *testing.T) []string {
	t.Helper()
	var texts []string
	err := filepath.WalkDir(m.Dir, func(path string, entry fs.DirEntry, err error) error {
		switch inside := filepath.Dir(path); {
		case err != nil:
			return err
		case entry.IsDir() && path != m.Dir && !(inside == m.Dir && licenceFolder.MatchString(entry.Name())):
			return fs.SkipDir
		case entry.IsDir() || strings.HasPrefix(entry.Name(), "gpl") || inside == m.Dir && !licenceFile.MatchString(entry.Name()):
			return nil
		}
		text, err := os.ReadFile(path)
		texts = append(texts, strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n")))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return texts
}

// writeNotices writes the licences of all modules, those that share a text under one.
func writeNotices(t *testing.T) {
	t.Helper()
	ofText := map[string][]string{}
	var order []string
	add := func(text, heading string) {
		if ofText[text] == nil {
			order = append(order, text)
		}
		if !slices.Contains(ofText[text], heading) {
			ofText[text] = append(ofText[text], heading)
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "LICENSE"))
	if err != nil {
		t.Fatal(err)
	}
	add(strings.TrimSpace(string(text)), standardLibrary)
	for _, system := range []string{"linux", "windows", "darwin"} {
		for _, m := range modulesOf(t, system) {
			add(strings.Join(m.licences(t), "\n\n"), m.heading())
		}
	}
	var all strings.Builder
	all.WriteString("dwellcast carries parts of the libraries below. Each comes with the licence under its name.\n")
	for _, text := range order {
		all.WriteString("\n" + strings.Repeat("=", 80) + "\n" + strings.Join(ofText[text], "\n") + "\n" + strings.Repeat("-", 80) + "\n\n" + text + "\n")
	}
	if err := os.WriteFile("notices.txt", []byte(all.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	notices = all.String()
}
