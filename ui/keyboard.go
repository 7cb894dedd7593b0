package ui

import (
	"time"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tarpside/ui/parts"
)

// keyboard is a real keyboard, or a reader of codes that types as one. No part
// takes the toolkit's focus, so whatever was touched last, the keys come here.
type keyboard struct {
	sh     *Shell
	canvas fyne.Canvas
	cursor *parts.Cursor
	scan   Scanner
	after  func(d time.Duration, f func()) // calls f on the window's goroutine
}

// Listen takes the keys of the canvas that shows the shell.
func (sh *Shell) Listen(c fyne.Canvas) {
	k := &keyboard{sh: sh, canvas: c, cursor: parts.NewCursor(c)}
	k.after = func(d time.Duration, f func()) { time.AfterFunc(d, func() { sh.opts.Post(f) }) }
	sh.keys = k
	c.SetOnTypedRune(k.rune)
	c.SetOnTypedKey(func(e *fyne.KeyEvent) { k.key(e.Name) })
	if d, ok := c.(desktop.Canvas); ok {
		d.SetOnKeyDown(func(e *fyne.KeyEvent) {
			if e.Name == fyne.KeyTab { // the toolkit keeps Tab from the others
				k.key(e.Name)
			}
		})
	}
	c.AddShortcut(&fyne.ShortcutUndo{}, func(fyne.Shortcut) { parts.Press(c, "undo") })
}

// rune holds a character until it is known who typed it.
func (k *keyboard) rune(r rune) {
	k.write(k.scan.Rune(r, k.sh.opts.tick()))
	k.after(k.scan.gap()+time.Millisecond, func() { k.write(k.scan.Quiet(k.sh.opts.tick())) })
}

func (k *keyboard) key(name fyne.KeyName) {
	code, typed := k.scan.Key(name, k.sh.opts.tick())
	k.write(typed)
	if code != "" {
		k.cursor.Hide()
		k.sh.scanned(code)
		return
	}
	if name == fyne.KeyEscape && !k.cursor.Hide() {
		parts.Press(k.canvas, leaving...)
		return
	}
	if k.cursor.Key(name) {
		k.sh.publish()
		return
	}
	letters, digits := parts.OpenPads(k.canvas)
	switch {
	case name == fyne.KeyBackspace && letters != nil:
		letters.OnDelete()
	case name == fyne.KeyBackspace && digits != nil:
		digits.Press("delete")
	case name != fyne.KeyReturn && name != fyne.KeyEnter:
	case letters != nil:
		k.enter(letters)
	case digits != nil:
		digits.Press("done")
	}
}

// leaving are the keys that Escape touches: the first that is on screen.
var leaving = []string{"close", "drop", "back", "later", "count-stop", "load", "seen"}

// enter is Return while letters are typed. Where pieces were found it goes to
// the first of them, for Return to pick.
func (k *keyboard) enter(letters *parts.LetterPad) {
	if k.cursor.To(func(p parts.Part) bool { return p.Kind == parts.KindPiece }) {
		k.sh.publish()
		return
	}
	letters.OnDone()
}

// write types what a person typed: into the pad that is open, else into Find.
func (k *keyboard) write(text string) {
	for _, r := range text {
		k.cursor.Hide()
		letters, digits := parts.OpenPads(k.canvas)
		switch {
		case letters != nil:
			letters.Type(r)
		case digits != nil:
			if r >= '0' && r <= '9' {
				digits.Press(string(r))
			}
		case unicode.IsLetter(r) && len(k.sh.over) == 0:
			k.sh.openFind()
			if letters, _ = parts.OpenPads(k.canvas); letters != nil {
				letters.Type(r)
			}
		}
	}
}

// openFind shows the Tarp with Find open.
func (sh *Shell) openFind() {
	sh.tarp().find.open(findPiece)
	sh.Go(ScreenTarp)
}

func (sh *Shell) tarp() *tarpScreen { return sh.screens[ScreenTarp].(*tarpScreen) }
