package look

import (
	"fmt"
	"image/color"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"sync"

	"fyne.io/fyne/v2"

	"tarpside/assets"
)

// picture is an SVG of ours that takes its colours from the theme each time it
// is read. The toolkit's themed resources recolour fills only, and our icons
// are strokes, so we do it here. The colours are part of the name, because
// the toolkit keeps rasterised pictures by name.
type picture struct {
	name, svg string
	inks      []ink
	px        int // width it is drawn at, in device pixels, nought for any
}

type ink struct {
	in    string
	token fyne.ThemeColorName
}

// Name holds the colours of the moment.
func (p *picture) Name() string {
	var b strings.Builder
	b.WriteString(p.name)
	if p.px > 0 {
		b.WriteString("-")
		b.WriteString(strconv.Itoa(p.px))
	}
	for _, k := range p.inks {
		b.WriteByte('-')
		b.WriteString(hex(Color(k.token)))
	}
	b.WriteString(".svg")
	return b.String()
}

// Content is the SVG in the colours of the moment.
func (p *picture) Content() []byte {
	s := p.svg
	for _, k := range p.inks {
		s = strings.ReplaceAll(s, k.in, "#"+hex(Color(k.token)))
	}
	return []byte(s)
}

var strokeWidth = regexp.MustCompile(`stroke-width="([0-9.]+)"`)
var viewWidth = regexp.MustCompile(`viewBox="0 0 ([0-9.]+) `)

var sized sync.Map // of "name-px" to SVG text

// Sized prepares a picture of this package for being drawn px device pixels
// wide. The toolkit's rasteriser scales the shapes of an SVG but not the width
// of its strokes, so the strokes are scaled here.
func Sized(res fyne.Resource, px float32) fyne.Resource {
	p, ok := res.(*picture)
	n := int(px + 0.5)
	if !ok || n <= 0 {
		return res
	}
	q := &picture{name: p.name, inks: p.inks, px: n}
	key := p.name + "-" + strconv.Itoa(n)
	if svg, ok := sized.Load(key); ok {
		q.svg = svg.(string)
		return q
	}
	k := 1.0
	if m := viewWidth.FindStringSubmatch(p.svg); m != nil {
		if w, err := strconv.ParseFloat(m[1], 64); err == nil && w > 0 {
			k = float64(n) / w
		}
	}
	q.svg = strokeWidth.ReplaceAllStringFunc(p.svg, func(s string) string {
		w, err := strconv.ParseFloat(strokeWidth.FindStringSubmatch(s)[1], 64)
		if err != nil {
			return s
		}
		return fmt.Sprintf(`stroke-width="%.2f"`, w*k)
	})
	sized.Store(key, q.svg)
	return q
}

func hex(c color.Color) string {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return fmt.Sprintf("%02x%02x%02x", n.R, n.G, n.B)
}

var icons = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	entries, err := assets.Icons.ReadDir("icons")
	if err != nil {
		panic("look: the icon folder is not in the program: " + err.Error())
	}
	for _, e := range entries {
		b, err := assets.Icons.ReadFile("icons/" + e.Name())
		if err != nil {
			panic("look: " + err.Error())
		}
		out[strings.TrimSuffix(e.Name(), ".svg")] = string(b)
	}
	return out
})

// Icons lists the names of all icons, in order.
func Icons() []string {
	var out []string
	for name := range icons() {
		out = append(out, name)
	}
	sort.Strings(out)
	return out
}

// HasIcon says whether there is an icon of that name.
func HasIcon(name string) bool {
	_, ok := icons()[name]
	return ok
}

// Icon is the named icon in the colour of text, following the theme. A name
// that does not exist gives the warning octagon, so that a slip is seen.
func Icon(name string) fyne.Resource { return IconIn(name, Text) }

// IconIn is the named icon in a colour of ours, following the theme.
func IconIn(name string, token fyne.ThemeColorName) fyne.Resource {
	svg, ok := icons()[name]
	if !ok {
		name, svg = "warn", icons()["warn"]
	}
	return &picture{name: "icon-" + name, svg: svg, inks: []ink{{"currentColor", token}}}
}
