package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

func TestMessagesFollowTheRules(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{errors.New("plain trouble"), "dwellcast: plain trouble\n"},
		{usage("do this", "no %s", "that"), "dwellcast: no that\n    do this\n"},
		{&complaint{errors.New("a.yaml:1:2: first\n    hint\na.yaml:3:4: second"), "", badInput},
			"dwellcast: a.yaml:1:2: first\n    hint\ndwellcast: a.yaml:3:4: second\n"},
	} {
		var out bytes.Buffer
		complain(&out, c.err)
		if out.String() != c.want {
			t.Errorf("%v is shown as %q, want %q", c.err, out.String(), c.want)
		}
	}
}

func TestUsageMistakes(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "no command given"},
		{[]string{"chekc"}, "did you mean check?"},
		{[]string{"frobnicate"}, "unknown command"},
		{[]string{"run"}, "needs a line file"},
		{[]string{"run", "a", "b"}, "takes one line file"},
		{[]string{"run", "a", "--shfts", "5"}, "did you mean --shifts?"},
		{[]string{"run", "a", "--shifts", "many"}, "--shifts"},
		{[]string{"run", "a", "--shifts", "-1"}, "--shifts is -1"},
		{[]string{"run", "a", "--workers", "-1"}, "--workers is -1"},
		{[]string{"run", "a", "--seed", "-1"}, "--seed"},
		{[]string{"run", "a", "--precision", "0.5"}, "--precision"},
		{[]string{"run", "a", "--precision", "0.5 s"}, "--precision"},
		{[]string{"run", "a", "--precision", "90%"}, "--precision is 90%"},
		{[]string{"run", "a", "--confidence", "100%"}, "--confidence is 100%"},
		{[]string{"run", "a", "--format", "docx"}, "unknown format"},
		{[]string{"check", "a", "--format", "docx"}, "unknown format"},
		{[]string{"version", "now"}, "takes no"},
	} {
		var out, errs bytes.Buffer
		if status := run(c.args, strings.NewReader(""), &out, &errs); status != badInput {
			t.Errorf("%q: exit status %d, want %d", c.args, status, badInput)
		}
		if !strings.HasPrefix(errs.String(), "dwellcast: ") || !strings.Contains(errs.String(), c.says) {
			t.Errorf("%q says %q, want %q in it", c.args, errs.String(), c.says)
		}
		if out.Len() > 0 {
			t.Errorf("%q prints %q on standard output", c.args, out.String())
		}
	}
}
