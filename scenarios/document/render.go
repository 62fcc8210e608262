package document

import (
	"bytes"
	"fmt"

	"go.yaml.in/yaml/v4"
)

// Render writes the document back as YAML text, without comments; Load reads it to an equal tree.
func Render(root *Node) (string, error) {
	var b bytes.Buffer
	dumper, err := yaml.NewDumper(&b, yaml.WithIndent(2), yaml.WithUnicode(true), yaml.WithLineWidth(-1))
	if err == nil {
		err = dumper.Dump(root.yaml())
	}
	if err == nil {
		err = dumper.Close()
	}
	if err != nil {
		return "", fmt.Errorf("write the document as YAML: %w", err)
	}
	return b.String(), nil
}

// yaml is the node as the YAML writer wants it.
func (n *Node) yaml() *yaml.Node {
	y := &yaml.Node{Kind: yaml.ScalarNode, Value: n.text, Tag: n.tag, Style: n.style}
	switch n.kind {
	case List:
		y.Kind = yaml.SequenceNode
	case Map:
		y.Kind = yaml.MappingNode
	}
	for i, v := range n.values {
		if n.kind == Map {
			y.Content = append(y.Content, n.keys[i].yaml())
		}
		y.Content = append(y.Content, v.yaml())
	}
	return y
}
