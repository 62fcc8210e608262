package document

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"go.yaml.in/yaml/v4"
)

// syntaxProblem puts what the YAML reader says into the words of a person who writes line files.
func syntaxProblem(origin Position, err error) error {
	if errors.Is(err, io.EOF) {
		return ProblemList{{At: origin, Message: "is empty", Hint: "dwellcast example writes a complete file"}}
	}
	e, ok := errors.AsType[*yaml.LoadError](err)
	if !ok {
		return ProblemList{{At: origin, Message: "is not YAML: " + err.Error(), Hint: "check the line"}}
	}
	message, hint := explain(e)
	return ProblemList{{At: origin.at(e.Mark.Line, e.Mark.Column), Message: message, Hint: hint}}
}

// explanations are keyed by what the YAML reader's message contains.
var explanations = []struct{ contains, message, hint string }{
	{"exceeded max depth", "nested more than 100 deep", "a line file needs about six levels"},
	{"mapping values are not allowed", "a colon where none is expected", "put a text that holds a colon and a blank in quotes, and give keys of one map the same indent"},
	{"found character that cannot start any token", "a value cannot start here", "indent with blanks, not tabs, and put a text that starts with %, @ or ` in quotes"},
	{"found unknown directive name", "a value cannot start here", "put a text that starts with % in quotes"},
	{"found a tab character", "a tab in the indent", "indent with blanks"},
	{"could not find expected ':'", "a key without a colon", "write key: value"},
	{"unknown anchor", "an alias without its anchor", "define it above with &name, or put a text that starts with * in quotes"},
	{"found unexpected end of stream", "the file ends inside a quoted text", "close the quote"},
}

func explain(e *yaml.LoadError) (message, hint string) {
	for _, x := range explanations {
		if strings.Contains(e.Message, x.contains) {
			return x.message, x.hint
		}
	}
	if strings.HasPrefix(e.ContextMsg, "while parsing a flow") {
		return "a comma or a closing bracket is missing", fmt.Sprintf("the bracket was opened in line %d, column %d", e.ContextMark.Line, e.ContextMark.Column)
	}
	if strings.HasPrefix(e.ContextMsg, "while parsing a block") {
		return "does not fit the indent", fmt.Sprintf("keys and dashes that belong together start in one column, here that of line %d, column %d", e.ContextMark.Line, e.ContextMark.Column)
	}
	return "is not YAML: " + e.Message, "check the indent, quotes and brackets of this line and the one above"
}
