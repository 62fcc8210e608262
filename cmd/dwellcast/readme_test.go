package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// In README.md an HTML comment before a fenced block says what the block is:
//
//	<!-- file: NAME -->                 the text of a file that the commands read
//	<!-- output -->                     a command after "$ ", and all that it prints
//	<!-- output: PART; PART/LINES -->   only these parts of it, or their first lines; "..." stands for the rest
//	<!-- output, status 2 -->           what it prints, complaints included, when it ends with that exit status
//
// A part begins with a line that is not indented, and is named by how that line begins. Pictures that a command draws are kept
// in testdata/readme.
var (
	readmeFile    = regexp.MustCompile("(?s)<!-- file: (\\S+) -->\n```\\w*\n(.*?)```\n")
	readmeOutput  = regexp.MustCompile("(?s)(<!-- output(?:, status (\\d))?(?:: ([^>]*))? -->\n```console\n)\\$ (.*?[^\\\\])\n(?:.*?)```\n")
	readmePicture = regexp.MustCompile(`--chart (\S+\.svg)`)
)

// TestREADME runs every command whose output the README shows, so that it shows no figure that no command prints any more.
func TestREADME(t *testing.T) {
	if testing.Short() {
		t.Skip("runs some thousand shifts")
	}
	readme := filepath.Join("..", "..", "README.md")
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for _, file := range readmeFile.FindAllStringSubmatch(string(text), -1) {
		if err := os.WriteFile(filepath.Join(folder, file[1]), []byte(file[2]), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var shown int
	fresh := readmeOutput.ReplaceAllStringFunc(string(text), func(block string) string {
		shown++
		part := readmeOutput.FindStringSubmatch(block)
		out := shellOutput(t, folder, part[4], part[2])
		return part[1] + "$ " + part[4] + "\n" + partsOf(t, out, part[3]) + "```\n"
	})
	if shown < 10 {
		t.Errorf("the README shows the output of %d commands; is its form still that of this test?", shown)
	}
	if *update {
		err = os.WriteFile(readme, []byte(fresh), 0o644)
	} else if diff := cmp.Diff(string(text), fresh); diff != "" {
		t.Errorf("README.md shows what no command prints (go test ./cmd/dwellcast -run README -update mends it):\n%s", diff)
	}
	if err != nil {
		t.Fatal(err)
	}
	comparePictures(t, folder, string(text))
}

// shellOutput runs a command of the README in a folder; TestMain has put dwellcast in its path.
func shellOutput(t *testing.T, folder, command, status string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	cmd := exec.Command("sh", "-c", command)
	cmd.Dir, cmd.Stdout, cmd.Stderr = folder, &out, &complaints
	cmd.Env = append(os.Environ(), "NO_COLOR=1")
	err := cmd.Run()
	if status == "" {
		status = "0"
	}
	if got := strconv.Itoa(cmd.ProcessState.ExitCode()); got != status {
		t.Errorf("%s\nended with status %s (%v), want %s: %s", command, got, err, status, complaints.String())
	}
	if status != "0" {
		out.Write(complaints.Bytes())
	}
	return out.String()
}

// partsOf picks the parts of an output that the README shows.
func partsOf(t *testing.T, out, list string) string {
	t.Helper()
	if list == "" {
		return out
	}
	var shown []string
	leaveOut := func() {
		if n := len(shown); n == 0 || !strings.HasSuffix(shown[n-1], "...") {
			shown = append(shown, "...")
		}
	}
	wanted := strings.Split(list, ";")
	for _, part := range splitParts(out) {
		lines, wants := 0, false
		if len(wanted) > 0 {
			lines, wants = wantedLines(wanted[0], part)
		}
		if !wants {
			leaveOut()
			continue
		}
		wanted = wanted[1:]
		if lines > 0 && lines < len(part) {
			part = append(part[:lines:lines], "...")
		}
		shown = append(shown, strings.TrimRight(strings.Join(part, "\n"), "\n"))
	}
	if len(wanted) > 0 {
		t.Errorf("no part of the output begins with %q", strings.TrimSpace(wanted[0]))
	}
	return strings.Join(shown, "\n\n") + "\n"
}

// splitParts cuts an output at its headings, the lines that are not indented.
func splitParts(out string) [][]string {
	var parts [][]string
	for line := range strings.Lines(out) {
		line = strings.TrimRight(line, "\n")
		if len(parts) == 0 || line != "" && line[0] != ' ' {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], line)
	}
	return parts
}

// wantedLines says whether a part is the one that is wanted, "heading" or "heading/lines", and how many lines of it; 0 is all.
func wantedLines(wanted string, part []string) (lines int, wants bool) {
	heading, number, _ := strings.Cut(strings.TrimSpace(wanted), "/")
	lines, _ = strconv.Atoi(number)
	return lines, strings.HasPrefix(part[0], heading)
}

// comparePictures holds the pictures that the README shows against those that its commands have drawn.
func comparePictures(t *testing.T, folder, text string) {
	t.Helper()
	for _, name := range readmePicture.FindAllStringSubmatch(text, -1) {
		got, err := os.ReadFile(filepath.Join(folder, name[1]))
		if err != nil {
			t.Errorf("the README's commands don't draw it: %v", err)
			continue
		}
		kept := filepath.Join("..", "..", "testdata", "readme", name[1])
		if *update {
			if err := os.WriteFile(kept, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want, err := os.ReadFile(kept); err != nil || !bytes.Equal(want, got) {
			t.Errorf("%s is not what its command draws (%v)", kept, err)
		}
	}
}
