// Package chart draws the pictures of the reports: lines with their uncertainty, grids with contours, tornadoes, state shares,
// loss sheets and the timing chart. A chart is a plain struct; Draw turns it into a Drawing, a list of a few kinds of shapes in
// points, and a Drawing writes itself as SVG, PNG or PDF. All three show the same shapes and need nothing from outside.
//
// The pictures must survive a photocopier and colour-blind readers. Series differ in dash, marker and label, areas in hatch;
// hue only helps. The hues are those of Okabe and Ito, Color Universal Design, 2008, lightened where the ground is dark.
//
// Coordinates are in points (1/72 inch), x to the right and y downwards from the top left corner.
package chart

// Caption holds the words around a chart.
type Caption struct {
	// Title says in a few words what is shown.
	Title string
	// Subtitle stands below the title in a smaller size; may be empty.
	Subtitle string
	// Description is read to those who can't see the chart; empty takes a plain one made from the data.
	Description string
	// Foot stands below the chart, for instance how the figures were made; may be empty.
	Foot string
}

// Chart is a picture that can be drawn.
type Chart interface {
	// Draw lays the chart out. It fails when the data contradict themselves, with a message that says where.
	Draw() (*Drawing, error)
}
