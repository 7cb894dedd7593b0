package look

import (
	"fmt"
	"image/color"
	"sort"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tarpside/assets"
)

// picture is an SVG of ours that takes its colours from the theme each time it
// is read. The toolkit's themed resources recolour fills only, and our icons
// are strokes, so we do it here. The colours are part of the name, because
// the toolkit keeps rasterised pictures by name.
type picture struct {
	name, svg string
	inks      []ink
}

type ink struct {
	in    string
	token fyne.ThemeColorName
}

// Name holds the colours of the moment.
func (p *picture) Name() string {
	var b strings.Builder
	b.WriteString(p.name)
	for _, k := range p.inks {
		b.WriteByte('-')
		b.WriteString(hex(theme.Color(k.token)))
	}
	b.WriteString(".svg")
	return b.String()
}

// Content is the SVG in the colours of the moment.
func (p *picture) Content() []byte {
	s := p.svg
	for _, k := range p.inks {
		s = strings.ReplaceAll(s, k.in, "#"+hex(theme.Color(k.token)))
	}
	return []byte(s)
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
