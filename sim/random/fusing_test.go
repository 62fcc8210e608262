package random_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"
	"testing"
)

// exact lists what may be used of package math: constants, and functions whose
// result IEEE 754 or plain bit work fixes.
var exact = map[string]bool{
	"Abs": true, "Ceil": true, "Float64bits": true, "Float64frombits": true, "Inf": true, "IsInf": true,
	"IsNaN": true, "Ln2": true, "MaxFloat64": true, "MaxInt64": true, "NaN": true, "Sqrt": true,
	"Sqrt2": true, "SqrtPi": true,
}

// Every product of floats must be rounded by a conversion before anything can
// be added to it, and no function of package math may be used that a processor
// could have its own way with.
func TestNoProductCanFuse(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	set := token.NewFileSet()
	var parsed []*ast.File
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		parsed = append(parsed, f)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	ignore := func(error) {} // imports stay unknown; what has no known type is taken for a float
	_, _ = (&types.Config{Error: ignore}).Check("random", set, parsed, info)
	for _, f := range parsed {
		for _, at := range unsafeArithmetic(f, info) {
			t.Errorf("%s: product not rounded, or function not exact", set.Position(at))
		}
	}
}

func unsafeArithmetic(f *ast.File, info *types.Info) []token.Pos {
	var found []token.Pos
	var parents []ast.Node
	ast.Inspect(f, func(n ast.Node) bool {
		if n == nil {
			parents = parents[:len(parents)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if n.Op == token.MUL && !harmless(n, info) && !rounded(parents) {
				found = append(found, n.OpPos)
			}
		case *ast.AssignStmt:
			if n.Tok == token.MUL_ASSIGN {
				found = append(found, n.TokPos)
			}
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok && x.Name == "math" && !exact[n.Sel.Name] {
				found = append(found, n.Pos())
			}
		}
		parents = append(parents, n)
		return true
	})
	return found
}

// harmless reports products of whole numbers or constants.
func harmless(n ast.Expr, info *types.Info) bool {
	tv := info.Types[n]
	if tv.Value != nil {
		return true
	}
	if tv.Type == nil {
		return false
	}
	basic, ok := tv.Type.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsInteger != 0
}

// rounded reports whether the product's next user is a conversion to float64,
// another product or quotient (checked in its turn), or a comparison.
func rounded(parents []ast.Node) bool {
	for i := len(parents) - 1; i >= 0; i-- {
		switch p := parents[i].(type) {
		case *ast.ParenExpr:
			continue
		case *ast.CallExpr:
			name, ok := p.Fun.(*ast.Ident)
			return ok && name.Name == "float64"
		case *ast.BinaryExpr:
			return p.Op != token.ADD && p.Op != token.SUB
		case *ast.GenDecl:
			return p.Tok == token.CONST
		case *ast.ValueSpec:
			continue
		default:
			return false
		}
	}
	return false
}
