package look

import (
	"fyne.io/fyne/v2"
)

// MarkColors lists the paint words that have a colour of their own.
func MarkColors() []string { return []string{"white", "yellow", "blue", "orange", "red", "green"} }

// MarkShapes lists the shapes that an owner mark can have.
func MarkShapes() []string { return []string{"circle", "square", "triangle", "bars"} }

// markPaint gives the colour for a paint word; an unknown word is white,
// because the shape and the letters still tell the owner.
func markPaint(word string) fyne.ThemeColorName {
	for _, w := range MarkColors() {
		if w == word {
			return fyne.ThemeColorName("mark-" + w)
		}
	}
	return MarkWhite
}

const svgHead = `<svg xmlns="http://www.w3.org/2000/svg" width="48" height="48" viewBox="0 0 48 48">`

// The marks on a 48 grid: a dark badge of the mark's own shape with the paint
// inside, so that a white ring survives on a white page. There is no diamond:
// on a road a coloured diamond is a hazard placard.
var markShape = map[string]string{
	"circle": `<circle cx="24" cy="24" r="24" fill="badge"/>` +
		`<circle cx="24" cy="24" r="18" fill="none" stroke="paint" stroke-width="5"/>` +
		`<circle cx="24" cy="24" r="8" fill="none" stroke="paint" stroke-width="5"/>`,
	"square": `<rect x="0" y="0" width="48" height="48" rx="3" fill="badge"/>` +
		`<rect x="8" y="8" width="32" height="32" fill="none" stroke="paint" stroke-width="6"/>`,
	"triangle": `<path d="M24 1 L47 44 Q48 47 45 47 H3 Q0 47 1 44 Z" fill="badge"/>` +
		`<path d="M24 16 L37 40 H11 Z" fill="none" stroke="paint" stroke-width="5"/>`,
	"bars": `<rect x="0" y="0" width="48" height="48" rx="3" fill="badge"/>` +
		`<rect x="8" y="9" width="13" height="30" fill="paint"/>` +
		`<rect x="27" y="9" width="13" height="30" fill="paint"/>`,
}

// MarkIcon is the owner mark for a shape word and a paint word. Where the
// shape is not one of [MarkShapes] it returns nil and the letters must stand
// alone, in a frame.
func MarkIcon(shape, paint string) fyne.Resource {
	svg, ok := markShape[shape]
	if !ok {
		return nil
	}
	return &picture{
		name: "mark-" + shape, svg: svgHead + svg + `</svg>`,
		inks: []ink{{"badge", MarkGround}, {"paint", markPaint(paint)}},
	}
}

// Drawing is a picture from SVG text whose ink words ("ink1", "ink2", ...) are
// replaced by the tokens in order. The name must tell the shape of the
// picture apart from all others.
func Drawing(name, svg string, tokens ...fyne.ThemeColorName) fyne.Resource {
	p := &picture{name: name, svg: svg}
	for i, t := range tokens {
		p.inks = append(p.inks, ink{"ink" + string(rune('1'+i)), t})
	}
	return p
}
