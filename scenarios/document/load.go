package document

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
	"go.yaml.in/yaml/v4/plugin/loaderlimits"
)

// What a document may hold. A line file has a few hundred values, nested six deep.
const (
	maxBytes = 1 << 20
	maxDepth = 100
	maxKey   = 200    // bytes in a key
	maxNodes = 20_000 // with every alias written out
)

// LoadFile reads the document in a file. The error is a ProblemList.
func LoadFile(path string) (*Node, error) {
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		return nil, whole(path, "is a directory", "give the file in it")
	}
	if err != nil {
		return nil, cannotOpen(path, err)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, cannotOpen(path, err)
	}
	defer func() { _ = file.Close() }() // only read from
	return Load(path, file)
}

func cannotOpen(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return whole(path, "no such file", "check the name and the folder")
	case errors.Is(err, fs.ErrPermission):
		return whole(path, "may not be read", "ask for permission to read it")
	}
	return whole(path, "cannot be opened: "+reason(err), "check the name and the folder")
}

// reason drops the operation and the path, which the message has already.
func reason(err error) string {
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		return e.Err.Error()
	}
	return err.Error()
}

// whole is a problem of a file as a whole.
func whole(name, message, hint string) error {
	return ProblemList{{At: Position{File: name}, Message: message, Hint: hint}}
}

// Load reads one document; name stands for it in messages. It refuses more than 1 MiB, nesting deeper than
// 100, more than 20,000 values, keys of more than 200 letters, text that is not UTF-8, tags, merge keys and a
// second document. The error is a ProblemList.
func Load(name string, r io.Reader) (*Node, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, whole(name, "cannot be read: "+reason(err), "check the file")
	}
	return parse(Position{File: name}, data)
}

// parse turns YAML text into a tree. Nodes take the origin's file and override.
func parse(origin Position, data []byte) (*Node, error) {
	if err := checkText(origin, data); err != nil {
		return nil, err
	}
	loader, err := yaml.NewLoader(bytes.NewReader(data), yaml.WithPlugin(loaderlimits.New(loaderlimits.DepthValue(maxDepth))))
	if err != nil {
		return nil, whole(origin.String(), err.Error(), "")
	}
	var tree, second yaml.Node
	if err := loader.Load(&tree); err != nil {
		return nil, syntaxProblem(origin, err)
	}
	switch err := loader.Load(&second); {
	case err == nil:
		return nil, ProblemList{{At: origin.at(second.Line, second.Column), Message: "a second document starts here", Hint: "keep one document in a file; remove what follows ---"}}
	case !errors.Is(err, io.EOF):
		return nil, syntaxProblem(origin, err)
	}
	return convert(origin, &tree)
}

// at is a place in the origin's text; an override has no lines.
func (origin Position) at(line, column int) Position {
	if origin.Override == "" {
		origin.Line, origin.Column = line, column
	}
	return origin
}

// checkText refuses what is not text of a sensible size.
func checkText(origin Position, data []byte) error {
	problem := func(message, hint string) error {
		return ProblemList{{At: origin, Message: message, Hint: hint}}
	}
	switch {
	case len(data) > maxBytes:
		return problem("is larger than 1 MiB", "is it a line file? one has a few kilobytes")
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return problem("is UTF-16 text", "save it as UTF-8")
	case bytes.IndexByte(data, 0) >= 0:
		return problem("is a binary file", "give a YAML file; dwellcast example writes one")
	case len(bytes.TrimSpace(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")))) == 0:
		return problem("is empty", "dwellcast example writes a complete file")
	}
	return checkCharacters(origin, data)
}

// checkCharacters refuses broken UTF-8 and control characters, with their place.
func checkCharacters(origin Position, data []byte) error {
	line, column := 1, 1
	for rest := data; len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size == 1:
			return ProblemList{{At: origin.at(line, column), Message: fmt.Sprintf("byte 0x%02x is not UTF-8 text", rest[0]), Hint: "save the file as UTF-8"}}
		case r < ' ' && r != '\n' && r != '\r' && r != '\t', r == 0x7f:
			return ProblemList{{At: origin.at(line, column), Message: fmt.Sprintf("control character 0x%02x", r), Hint: "remove it"}}
		case r == '\n':
			line, column = line+1, 0
		}
		column++
		rest = rest[size:]
	}
	return nil
}
