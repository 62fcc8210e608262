package chart

import (
	"fmt"
	"image/color"
	"io"
	"math"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// pixelsPerInch gives two pixels a point.
const pixelsPerInch = 144

// raster paints a drawing with pixels.
type raster struct {
	canvas *vgimg.Canvas
	height float64
	faces  [2]*opentype.Font // regular and bold
}

// writePNG paints the drawing on white at two pixels a point.
func (d *Drawing) writePNG(w io.Writer) error {
	r := raster{
		canvas: vgimg.NewWith(vgimg.UseWH(vg.Length(d.Width), vg.Length(d.Height)), vgimg.UseDPI(pixelsPerInch)),
		height: d.Height,
	}
	for i, data := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		face, err := opentype.Parse(data)
		if err != nil {
			return fmt.Errorf("font: %w", err)
		}
		r.faces[i] = face
	}
	for _, s := range d.shapes {
		switch s := s.(type) {
		case path:
			r.paint(s.vg(r.height), s.look)
		case disc:
			r.paint(s.vg(r.height), s.look)
		case label:
			r.write(s)
		}
	}
	_, err := vgimg.PngCanvas{Canvas: r.canvas}.WriteTo(w)
	return err
}

// paint fills and strokes a path.
func (r *raster) paint(p vg.Path, l look) {
	if l.fill != none {
		c := l.fill.rgb()
		if l.faint {
			c.A = uint8(math.Round(faintness * 0xFF))
		}
		r.canvas.SetColor(c)
		r.canvas.Fill(p)
	}
	if l.line != none {
		r.canvas.SetColor(color.Color(l.line.rgb()))
		r.canvas.SetLineWidth(vg.Length(l.width))
		var dash []vg.Length
		for _, v := range l.dash {
			dash = append(dash, vg.Length(v))
		}
		r.canvas.SetLineDash(dash, 0)
		r.canvas.Stroke(p)
	}
}

// write sets a line of text.
func (r *raster) write(l label) {
	face := font.Face{Font: font.Font{Typeface: "Liberation", Variant: "Sans", Size: vg.Length(l.size)}, Face: r.faces[0]}
	if l.bold {
		face.Face = r.faces[1]
	}
	r.canvas.Push()
	defer r.canvas.Pop()
	r.canvas.SetColor(l.ink.rgb())
	r.canvas.Translate(vg.Point{X: vg.Length(l.at.x), Y: vg.Length(r.height - l.at.y)})
	r.canvas.Rotate(l.angle * math.Pi / 180)
	shift := -face.Width(l.words) * vg.Length(l.anchor) / 2
	r.canvas.FillString(face, vg.Point{X: shift}, l.words)
}

// vg turns the path over, since there y runs upwards.
func (p path) vg(height float64) vg.Path {
	var out vg.Path
	for _, run := range p.runs {
		for i, at := range run {
			to := vg.Point{X: vg.Length(at.x), Y: vg.Length(height - at.y)}
			if i == 0 {
				out.Move(to)
			} else {
				out.Line(to)
			}
		}
		if p.closed {
			out.Close()
		}
	}
	return out
}

func (c disc) vg(height float64) vg.Path {
	var out vg.Path
	centre := vg.Point{X: vg.Length(c.centre.x), Y: vg.Length(height - c.centre.y)}
	out.Move(vg.Point{X: centre.X + vg.Length(c.radius), Y: centre.Y})
	out.Arc(centre, vg.Length(c.radius), 0, 2*math.Pi)
	out.Close()
	return out
}
