package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// What is being typed.
const (
	findPiece = "find"  // three letters of a piece
	findPlace = "place" // the name of a new place
)

// typing is Find and New place: letters of our own in the lower half, and what
// they find above.
type typing struct {
	sh    *Shell
	t     *tarpScreen
	on    bool
	what  string
	text  string
	out   *parts.Readout
	shut  *parts.Key
	with  *parts.Key // what was typed is an agency, not a place
	found *parts.Tiles
	pad   *parts.LetterPad
	words []*parts.Key // places to choose instead of typing
	trail *fyne.Container
	none  *parts.Label
	log   *parts.Key     // logs what nobody listed, in words
	count int            // pieces found
	only  parts.TileView // the first of them
}

// placeWords are plain places that a scene may have.
var placeWords = []string{words.K("V3"), words.K("Side A"), words.K("Side B"), words.K("Side C"), words.K("Side D"), words.K("Rehab"), words.K("Debris"), words.K("Decon"), words.K("Trail"), words.K("Water")}

func newTyping(sh *Shell, t *tarpScreen) *typing {
	y := &typing{sh: sh, t: t}
	y.out = parts.NewReadout(parts.ReadoutView{ID: "typed", Tone: parts.Live})
	y.shut = parts.NewKey(parts.KeyView{ID: "close", Title: words.L("Close"), Icon: "cross"}, y.close)
	y.with = parts.NewKey(parts.KeyView{}, func() { y.keep(settingAgencies) })
	y.found = parts.NewTiles(t.touch)
	y.found.More = moreTile
	y.pad = parts.NewLetterPad(y.typed, y.delete, y.done)
	for _, w := range placeWords {
		y.words = append(y.words, parts.NewKey(parts.KeyView{Kind: parts.KindAct, ID: "place-" + w, Title: words.L(w), Lay: parts.LayCentre}, func() {
			y.text = words.L(w)
			y.done()
		}))
	}
	y.trail = box(y.layWords)
	for _, k := range y.words {
		y.trail.Add(k)
	}
	y.log = parts.NewKey(parts.KeyView{}, func() { t.logUnknown(strings.TrimSpace(y.text)) })
	y.none = parts.NewLines(parts.LabelView{ID: "none", Role: look.Lead})
	return y
}

// layWords lays the plain places out in the rows that there is room for, all
// of them if a finger still finds each.
func (y *typing) layWords(size fyne.Size) {
	gap, h := look.U(look.Gap), look.U(look.Floor)
	rows := max(1, int((size.Height+gap)/(h+gap)))
	cols := min((len(y.words)+rows-1)/rows, max(1, int((size.Width+gap)/(h+gap))))
	w := (size.Width - gap*float32(cols-1)) / float32(cols)
	for i, k := range y.words {
		yy := float32(i/cols) * (h + gap)
		k.Hidden = yy+h > size.Height+1
		place(k, float32(i%cols)*(w+gap), yy, w, h)
	}
}

func (y *typing) open(what string) { y.on, y.what, y.text = true, what, "" }

func (y *typing) objects() []fyne.CanvasObject {
	top := []fyne.CanvasObject{y.out, y.shut, y.pad}
	switch {
	case y.what == findPlace:
		return append(top, y.with, y.trail)
	case y.count == 0 && y.sh.now().unlisted(strings.TrimSpace(y.text)):
		return append(top, y.none, y.log)
	case y.count == 0:
		return append(top, y.none)
	}
	return append(top, y.found)
}

func (y *typing) layout(w, h float32) {
	gap, row := look.U(look.Gap), look.U(look.Floor)
	padH := 4*row + 3*gap
	shutW := look.U(150)
	y0 := h - padH - gap - row
	place(y.pad, 0, h-padH, w, padH)
	outW := w - shutW - gap
	if y.what == findPlace {
		withW := look.U(190)
		outW -= withW + gap
		place(y.with, outW+gap, y0, withW, row)
	}
	place(y.out, 0, y0, outW, row)
	place(y.shut, w-shutW, y0, shutW, row)
	place(y.log, 0, y0-gap-row, min(w, look.U(640)), row)
	for _, o := range []fyne.CanvasObject{y.found, y.trail, y.none} {
		place(o, 0, 0, w, y0-gap)
	}
}

// show brings what is found up to date.
func (y *typing) show(n *now) {
	ask := words.L("Three letters of a piece")
	if y.what == findPlace {
		ask = words.L("Name of the place, or touch one above")
	}
	v := parts.ReadoutView{ID: "typed", Text: y.text, Tone: parts.Live, Role: look.Place}
	if y.text == "" {
		v.Text, v.Role, v.Tone = ask, look.Lead, parts.Hole
	}
	y.out.Set(v)
	views := n.found(y.text, y.t.picks)
	if y.count = len(views); y.count > 0 {
		y.only = views[0]
	}
	y.found.Set(views)
	shut := parts.KeyView{ID: "close", Title: words.L("Close"), Icon: "cross"}
	if y.what == findPiece && y.text != "" {
		shut.Second = words.F("%d found", y.count)
	}
	y.shut.Set(shut)
	with := parts.KeyView{ID: "agency", Title: words.L("Agency"), Second: words.L("pieces go with it"), Icon: "with", Lay: parts.LayLeft}
	if with.Off = strings.TrimSpace(y.text) == ""; with.Off {
		with.Second = words.L("type its name")
	}
	y.with.Set(with)
	none := words.L("Letters find a piece by any of its names, on every rig, wherever it is now.")
	if y.text != "" {
		none = words.F("Nothing is called %s. Try fewer letters, or another word for it.", y.text)
	}
	y.none.SetText(none)
	y.log.Set(parts.KeyView{ID: "log-unknown", Title: words.F("Log %s as unknown", quoted(strings.TrimSpace(y.text))),
		Second: words.L("in these words, on the tarp"), Icon: "plus", Lay: parts.LayLeft})
}

func (y *typing) typed(s string) {
	y.text += s
	y.found.FirstPage()
	y.sh.refresh()
}

func (y *typing) delete() {
	if r := []rune(y.text); len(r) > 0 {
		y.text = string(r[:len(r)-1])
	}
	y.found.FirstPage()
	y.sh.refresh()
}

func (y *typing) close() {
	y.on = false
	y.sh.refresh()
}

// done ends typing; a name that was typed becomes a place of the scene. Of
// pieces it takes the one that has these letters, and what nobody listed it
// logs in words: what was typed is never lost by it.
func (y *typing) done() {
	switch text := strings.TrimSpace(y.text); {
	case y.what == findPlace:
		y.keep(settingPlaces)
	case y.count == 1 && text != "":
		y.t.touch(y.only)
	case y.count == 0 && y.sh.now().unlisted(text):
		y.t.logUnknown(text)
	default:
		y.close()
	}
}

// keep adds what was typed to the places, or to the agencies, of the scene.
func (y *typing) keep(setting string) {
	if strings.TrimSpace(y.text) != "" {
		if err := y.sh.now().addPlace(setting, y.text); err != nil {
			y.sh.said = &said{trouble: inWords(err)}
		}
	}
	y.close()
}
