package ui

import (
	"errors"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/board/paper"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/words"
)

// The screens, by the names of the -screen flag and of the parts file.
const (
	ScreenTarp      = "tarp"
	ScreenGlance    = "glance"
	ScreenLoadUp    = "loadup"
	ScreenLeaving   = "leaving"
	ScreenLookFor   = "lookfor"
	ScreenMore      = "more"
	ScreenBringBack = "bringback"
	ScreenSettings  = "settings"
	ScreenStores    = "stores"
	ScreenTrail     = "trail"
)

// Screens are the screens that the window can open on.
var Screens = []string{ScreenTarp, ScreenGlance, ScreenLoadUp, ScreenLeaving, ScreenLookFor, ScreenTrail, ScreenBringBack, ScreenStores, ScreenSettings, ScreenMore}

// Options are what the window needs from the program that opens it.
type Options struct {
	Board    *board.Board
	Now      func() time.Time // the time of the scene; the demo's stands still
	Tick     func() time.Time // a clock that runs on while the scene's stands still; nil is time.Now
	Post     func(func())     // runs a function on the window's goroutine
	SetTheme func(fyne.Theme) // puts a look in force
	Changed  func()           // called after every change of what is drawn; may be nil
	Look     look.Options
	Practice bool
	Screen   string       // the first screen
	Demo     func() error // leaves for a practice copy of the demo; may be nil
	Real     func() error // leaves practice for the department's own log; may be nil

	LookGiven bool // the look was asked for: what the tablet remembers does not change it

	// Folders and LoadFrom let tables be loaded from here; both may be nil.
	// Folders lists a folder, "" for the one to begin with. LoadFrom changes
	// the inventory to the tables of a folder, or with dry only says what
	// would change; its error names every bad row.
	Folders  func(dir string) (Folder, error)
	LoadFrom func(dir, by string, dry bool) (changes []string, err error)

	// Print writes a paper to a file, whose path it returns, and opens it in
	// the system's viewer; opened is called on the window's goroutine once it
	// is known whether one came up. It may be nil.
	Print func(p paper.Paper, opened func(err error)) (path string, err error)
}

// A Shell is the window's content: the frame, and the screen that is shown.
type Shell struct {
	opts    Options
	root    *fyne.Container
	width   float32 // that the words on screen were chosen for
	frame   *frame
	screens map[string]screen
	welcome screen // the Tarp while no department is loaded
	here    string
	over    []screen // opened over the screen: a release, a hand-over
	pic     *board.Picture
	older   map[string][]model.Entry // of scenes that are over, see before
	rig     string                   // the rig that Load up and Leaving are about
	away    string                   // the rig that was last spoken of as called away
	splits  map[string]*split        // by rig: what it grabs and what it leaves
	by      string                   // who logs on this tablet
	acting  string                   // the acting officer of the tour
	top     screen                   // that was shown last
	drawn   map[screen]look.Options  // the look that a screen was last drawn in
	said    *said
	keys    *keyboard // nil until Listen
	memo    memo
	busy    bool              // an act is on its way: the screen is drawn when its answer is there
	sums    *sumSettings      // nil until they are read
	snoozed map[string]snooze // by item: what was seen to be in order though it is out long
}

// said is what the last act on this tablet got for an answer.
type said struct {
	entries []model.Entry
	trouble *ledger.Trouble
	retry   *board.Tap // what the one key of a refusal does instead
	key     string     // its words
}

// A screen is one screen of the window.
type screen interface {
	// body is built once; the shell gives it the room between header and foot.
	body() fyne.CanvasObject
	// show brings the parts up to date, and says what the header shows.
	show(n *now) head
}

// A leaver is a screen with something begun that must not be lost: it is told
// when another screen has taken its place, whatever was touched for that.
type leaver interface{ left() }

// now is what a screen is made from.
type now struct {
	*Shell
	pic   *board.Picture
	s     *model.State
	d     *model.Department
	scene *model.Scene
	at    time.Time
}

// New builds the window's content over an open board.
func New(opts Options) *Shell {
	sh := &Shell{opts: opts, here: opts.Screen, drawn: map[screen]look.Options{}, splits: map[string]*split{}}
	sh.pic = sh.withPast(opts.Board.Picture())
	if sh.here == "" {
		sh.here = ScreenTarp
	}
	sh.settings()
	opts.SetTheme(look.New(sh.opts.Look))
	sh.screens = map[string]screen{
		ScreenTarp: newTarp(sh), ScreenGlance: newGlance(sh), ScreenLoadUp: newLoadUp(sh),
		ScreenLeaving: newLeaving(sh), ScreenLookFor: newLookFor(sh), ScreenMore: newMore(sh),
		ScreenBringBack: newBringBack(sh), ScreenSettings: newSettings(sh), ScreenStores: newStores(sh), ScreenTrail: newTrail(sh),
	}
	sh.welcome = newWelcome(sh)
	if sh.screens[sh.here] == nil {
		sh.here = ScreenTarp
	}
	sh.frame = newFrame(sh)
	sh.root = box(sh.layout, sh.frame.objects()...)
	opts.Board.Watch(func(p *board.Picture) { opts.Post(func() { sh.take(p) }) })
	sh.refresh()
	return sh
}

// layout puts everything where it belongs. What a screen says depends on its
// room: in another width it is made anew at once, not at the next touch.
func (sh *Shell) layout(size fyne.Size) {
	sh.frame.layout(size)
	if size.Width != sh.width {
		sh.width = size.Width
		sh.refresh()
	}
}

// tick is the time by the clock that never stands still.
func (o *Options) tick() time.Time {
	if o.Tick == nil {
		return time.Now()
	}
	return o.Tick()
}

// Root is the content of the window.
func (sh *Shell) Root() fyne.CanvasObject { return sh.root }

// take shows a newer picture.
func (sh *Shell) take(p *board.Picture) {
	if p.Gen > sh.pic.Gen {
		sh.pic = sh.withPast(p)
		if !sh.busy {
			sh.refresh()
		}
	}
}

// Refresh draws what time alone has changed: the clock, the ages.
func (sh *Shell) Refresh() { sh.refresh() }

func (sh *Shell) now() *now {
	s := sh.pic.State
	return &now{Shell: sh, pic: sh.pic, s: s, d: s.Dept, scene: s.Scene(sh.pic.Scene), at: sh.opts.Now()}
}

// shown is the screen on top.
func (sh *Shell) shown() screen {
	if n := len(sh.over); n > 0 {
		return sh.over[n-1]
	}
	if sh.empty() && needsPieces[sh.here] {
		return sh.welcome
	}
	return sh.screens[sh.here]
}

// refresh brings everything on screen up to date. Parts that show the same as
// before are not drawn again.
func (sh *Shell) refresh() {
	sc := sh.shown()
	if was, ok := sh.top.(leaver); ok && sh.top != sc {
		sh.top = sc
		was.left()
	}
	sh.top = sc
	n := sh.now()
	sh.settleRig(n)
	h := sc.show(n)
	sh.frame.show(n, sc, h)
	sh.publish()
}

// publish tells that something else is on screen.
func (sh *Shell) publish() {
	if sh.opts.Changed != nil && sh.root != nil && sh.root.Size().Width > 0 {
		sh.opts.Changed()
	}
}

// Go shows a screen.
func (sh *Shell) Go(name string) {
	if sh.screens[name] != nil {
		sh.here, sh.over = name, nil
		sh.refresh()
	}
}

// open puts a screen over the one that is shown; back takes it away.
func (sh *Shell) open(s screen) {
	sh.over = append(sh.over, s)
	sh.refresh()
}

func (sh *Shell) back() {
	if n := len(sh.over); n > 0 {
		delete(sh.drawn, sh.over[n-1])
		sh.over = sh.over[:n-1]
	}
	sh.refresh()
}

// settleRig keeps the rig that Load up and Leaving are about a sensible one:
// one that is here, the one with the most pieces off first.
func (sh *Shell) settleRig(n *now) {
	present := n.present()
	for _, r := range present {
		if r == sh.rig {
			return
		}
	}
	best := -1
	for _, r := range present {
		if off := n.account(r); off.CameOff > best {
			sh.rig, best = r, off.CameOff
		}
	}
}

// log logs one touch: the acts happen together. The answer stands in the strip
// of the screen until the next one.
func (sh *Shell) log(tap board.Tap) []model.Entry {
	for i := range tap.Acts {
		if tap.Acts[i].By == "" {
			tap.Acts[i].By = sh.by
		}
	}
	tap.Typed = sh.typed(tap.Typed)
	sh.busy = true
	entries, err := sh.opts.Board.Log(tap)
	sh.busy = false
	sh.said = &said{entries: entries}
	if err != nil {
		sh.said = &said{trouble: inWords(err)}
	}
	sh.catchUp()
	sh.refresh()
	return entries
}

// act logs one act that names no pieces.
func (sh *Shell) act(a model.Act) {
	a.Quantity = model.Blank
	sh.log(board.Tap{Acts: []model.Act{a}})
}

// typed is when an act happened: in practice the scene's own time counts.
func (sh *Shell) typed(t time.Time) time.Time {
	if !sh.opts.Practice {
		return t
	}
	if t.IsZero() {
		return sh.opts.Now()
	}
	return t
}

// inWords makes words of an error, in the language of the window: what
// happened, what is safe, what to do.
func inWords(err error) *ledger.Trouble {
	var t *ledger.Trouble
	if errors.As(err, &t) {
		return &ledger.Trouble{What: words.Said(t.What), Safe: words.Said(t.Safe), Do: words.Said(t.Do), Err: t.Err}
	}
	return &ledger.Trouble{What: words.L("That was not logged"), Safe: words.L("What was logged before is safe"), Do: words.L("Try again"), Err: err}
}

// LookFor is the look for a window of a size: on a large glass everything
// grows first, and only what is left is filled with more.
func LookFor(size fyne.Size, day bool) look.Options {
	o := look.Options{Day: day}
	if size.Width >= 1800 && size.Height >= 1100 {
		o.PerInch = look.PerInch * 1.25
	}
	return o
}
