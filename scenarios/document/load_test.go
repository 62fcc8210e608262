package document_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dwellcast/scenarios/document"
)

// TestRefusals holds the text of every complaint about a file that cannot be read.
func TestRefusals(t *testing.T) {
	bomb := "a: &a [x, x, x, x, x, x, x, x, x, x]\n"
	for _, pair := range []string{"ab", "bc", "cd", "de", "ef", "fg"} {
		bomb += pair[1:] + ": &" + pair[1:] + " [" + strings.Repeat("*"+pair[:1]+", ", 9) + "*" + pair[:1] + "]\n"
	}
	tests := []struct{ name, text, want string }{
		{"empty", "", "line.yaml: is empty\n    dwellcast example writes a complete file"},
		{"blank", "\n\n", "line.yaml: is empty\n    dwellcast example writes a complete file"},
		{"comments only", "# nothing\n", "line.yaml: is empty\n    dwellcast example writes a complete file"},
		{"binary", "a: \x00b", "line.yaml: is a binary file\n    give a YAML file; dwellcast example writes one"},
		{"UTF-16", "\xff\xfea\x00:\x00", "line.yaml: is UTF-16 text\n    save it as UTF-8"},
		{"Latin-1", "title: caf\xe9\n", "line.yaml:1:11: byte 0xe9 is not UTF-8 text\n    save the file as UTF-8"},
		{"control", "a: 1\nb: \x01\n", "line.yaml:2:4: control character 0x01\n    remove it"},
		{"large", "a: " + strings.Repeat("x", 1<<20), "line.yaml: is larger than 1 MiB\n    is it a line file? one has a few kilobytes"},
		{"two documents", "a: 1\n---\nb: 2\n", "line.yaml:2:1: a second document starts here\n    keep one document in a file; remove what follows ---"},
		{"tab", "a:\n\tb: 1\n", "line.yaml:2:1: a value cannot start here\n    indent with blanks, not tabs, and put a text that starts with %, @ or ` in quotes"},
		{"percent first", "a: %5\n", "line.yaml:1:4: a value cannot start here\n    indent with blanks, not tabs, and put a text that starts with %, @ or ` in quotes"},
		{"two colons", "a: b: c\n", "line.yaml:1:5: a colon where none is expected\n    put a text that holds a colon and a blank in quotes, and give keys of one map the same indent"},
		{"indent", "a: 1\n  b: 2\n", "line.yaml:2:4: a colon where none is expected\n    put a text that holds a colon and a blank in quotes, and give keys of one map the same indent"},
		{"open bracket", "a: [1, 2\nb: 3\n", "line.yaml:2:2: a comma or a closing bracket is missing\n    the bracket was opened in line 1, column 4"},
		{"open brace", "a: {b: 1\n", "line.yaml:2:1: a comma or a closing bracket is missing\n    the bracket was opened in line 1, column 4"},
		{"mixed", "- a\nb: 1\n", "line.yaml:2:1: does not fit the indent\n    keys and dashes that belong together start in one column, here that of line 1, column 1"},
		{"no colon", "a: 1\nb\n", "line.yaml:3:1: a key without a colon\n    write key: value"},
		{"open quote", "a: \"b\n", "line.yaml:2:1: the file ends inside a quoted text\n    close the quote"},
		{"unknown anchor", "a: *nope\n", "line.yaml:1:4: an alias without its anchor\n    define it above with &name, or put a text that starts with * in quotes"},
		{"alias in itself", "a: &x [*x]\n", "line.yaml:1:4: nested more than 100 deep\n    a line file needs about six levels; does an anchor contain its own alias?"},
		{"alias bomb", bomb, "line.yaml:1:17: more than 20000 values\n    a line file has a few hundred; do aliases multiply here?"},
		{"many values", "[" + strings.Repeat("1,", 20001) + "1]", "line.yaml:1:40000: more than 20000 values\n    a line file has a few hundred; do aliases multiply here?"},
		{"deep brackets", strings.Repeat("[", 10000), "line.yaml:1:101: nested more than 100 deep\n    a line file needs about six levels"},
		{"deep braces", strings.Repeat("{a: ", 10000), "line.yaml:1:401: nested more than 100 deep\n    a line file needs about six levels"},
		{"deep dashes", strings.Repeat("- ", 10000), "line.yaml:1:201: nested more than 100 deep\n    a line file needs about six levels"},
		{"merge key", "a: &x {b: 1}\nc:\n  <<: *x\n", "line.yaml:3:3: merge keys (<<) are not read\n    write the keys out, or use an alias for the whole value"},
		{"tag", "a: !!binary aGk=\n", "line.yaml:1:4: the tag !!binary is not read\n    remove it; put a text in quotes instead"},
		{"list as key", "? [a, b]\n: 1\n", "line.yaml:1:3: a key is not a plain word\n    write key: value"},
		{"long key", "{" + strings.Repeat("k", 201) + ": 1}", "line.yaml:1:2: a key of more than 200 letters\n    write key: value"},
		{"no key", ": 1\n", "line.yaml:1:1: a key is not a plain word\n    write key: value"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := document.Load("line.yaml", strings.NewReader(tt.text))
			var list document.ProblemList
			if !errors.As(err, &list) || err.Error() != tt.want {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
}

// TestRepeatedPieces: long texts that are nothing but trouble end in an answer.
func TestRepeatedPieces(t *testing.T) {
	for _, piece := range []string{"[", "{", "- ", "? ", "a: ", "&a ", "*a ", "!t ", "\"", "'", "|\n", "#", "a\n", "a:\n", " ", "\t", "[a,", "{a,", "a: &a\n", "---\n", "%", "? a\n", "- - a\n", "[]", ": "} {
		text := strings.Repeat(piece, (1<<15)/len(piece))
		node, err := document.Load("x", strings.NewReader(text))
		if (node == nil) == (err == nil) {
			t.Errorf("%q repeated: node %v, error %v", piece, node, err)
		}
	}
}

func TestLoadFile(t *testing.T) {
	dir := t.TempDir()
	good := filepath.Join(dir, "line.yaml")
	if err := os.WriteFile(good, []byte("\xef\xbb\xbftitle: demo\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	root, err := document.LoadFile(good)
	if err != nil {
		t.Fatal(err)
	}
	title, err := document.Find(root, "title")
	if err != nil || title.Raw() != "demo" || title.At().String() != good+":1:8" {
		t.Errorf("title %q at %s, %v", title.Raw(), title.At(), err)
	}
	for path, want := range map[string]string{
		dir:                          dir + ": is a directory\n    give the file in it",
		filepath.Join(dir, "x.yaml"): filepath.Join(dir, "x.yaml") + ": no such file\n    check the name and the folder",
	} {
		if _, err := document.LoadFile(path); err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

// TestLoadReadsNoMoreThanItMust: an endless input is refused, not read.
func TestLoadReadsNoMoreThanItMust(t *testing.T) {
	if _, err := document.Load("endless", endless{}); err == nil || !strings.Contains(err.Error(), "larger than 1 MiB") {
		t.Errorf("got %v", err)
	}
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'x'
	}
	return len(p), nil
}
