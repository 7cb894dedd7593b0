package look

import (
	"image/color"
	"maps"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Options say how a tablet wants the window drawn.
type Options struct {
	// Day takes the palette for sunlight; else the one for night. The
	// desktop's own light or dark setting is never followed: a tablet that
	// turns white by itself at night blinds the person holding it.
	Day bool
	// Text is the scale of the type: 1.0, 1.3 or 1.6. Nought means 1.0.
	Text float32
	// PerInch is how many pixels of the glass make an inch, nought for
	// [PerInch]. [PerInchOfCard] works it out from a bank card.
	PerInch float32
	// Locked is the wet lock: tiles and keys lose their edge, all else stays
	// readable.
	Locked bool
}

// PerInch is the tablet that the design sizes were drawn for, pixels an inch.
const PerInch = 149

// PerInchOfCard gives the pixels an inch of a glass on which the long side of
// a bank card covers px pixels.
func PerInchOfCard(px float32) float32 {
	const cardMM = 85.60 // ISO/IEC 7810, ID-1 card: 85.60 x 53.98 mm
	return px / cardMM * mmPerInch
}

// Theme is the look of the whole window. It is never changed; to switch
// palette or scale, set another one with App.Settings().SetTheme.
type Theme struct {
	opt    Options
	colors palette
	unit   float32
}

var _ fyne.Theme = (*Theme)(nil)

// New makes a theme. Sizes outside what a hand can use are brought to the
// nearest that it can.
func New(opt Options) *Theme {
	t := &Theme{opt: opt, colors: night}
	if opt.Day {
		t.colors = day
	}
	if opt.Locked {
		t.colors = maps.Clone(t.colors)
		t.colors[Edge], t.colors[KeyEdge] = t.colors[Clear], t.colors[Clear]
	}
	if t.opt.Text == 0 {
		t.opt.Text = 1
	}
	t.opt.Text = min(max(t.opt.Text, 1), 1.6)
	if t.opt.PerInch == 0 {
		t.opt.PerInch = PerInch
	}
	t.opt.PerInch = min(max(t.opt.PerInch, 72), 400)
	t.unit = t.opt.PerInch / PerInch
	return t
}

// Options returns what the theme was made from, with the defaults filled in.
func (t *Theme) Options() Options { return t.opt }

// Color looks up one of our colours, or the nearest of ours for a colour of
// the toolkit. The variant of the desktop is ignored.
func (t *Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	if c, ok := t.colors[name]; ok {
		return c
	}
	if ours, ok := builtin[name]; ok {
		return t.colors[ours]
	}
	return t.colors[Text]
}

// builtin maps the colours that the toolkit asks for to ours.
var builtin = map[fyne.ThemeColorName]fyne.ThemeColorName{
	theme.ColorNameBackground:          Ground,
	theme.ColorNameButton:              Raised,
	theme.ColorNameDisabled:            Dim,
	theme.ColorNameDisabledButton:      Ground,
	theme.ColorNameError:               Alarm,
	theme.ColorNameFocus:               Accent,
	theme.ColorNameForeground:          Text,
	theme.ColorNameForegroundOnError:   AlarmGround,
	theme.ColorNameForegroundOnPrimary: OnFill,
	theme.ColorNameForegroundOnSuccess: OnFill,
	theme.ColorNameForegroundOnWarning: AlarmGround,
	theme.ColorNameHeaderBackground:    Surface,
	theme.ColorNameHover:               Clear,
	theme.ColorNameHyperlink:           Accent,
	theme.ColorNameInputBackground:     Ground,
	theme.ColorNameInputBorder:         Strong,
	theme.ColorNameMenuBackground:      Raised,
	theme.ColorNameOverlayBackground:   Surface,
	theme.ColorNamePlaceHolder:         Dim,
	theme.ColorNamePressed:             Soft,
	theme.ColorNamePrimary:             Fill,
	theme.ColorNameScrollBar:           Strong,
	theme.ColorNameScrollBarBackground: Clear,
	theme.ColorNameSelection:           Soft,
	theme.ColorNameSeparator:           Line,
	theme.ColorNameShadow:              Clear,
	theme.ColorNameSuccess:             Accent,
	theme.ColorNameWarning:             Alarm,
}

// Font is the face the toolkit embeds, Noto Sans: its figures line up.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	return theme.DefaultTheme().Font(style)
}

// Icon passes on the toolkit's own icons; ours come from [Icon].
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return theme.DefaultTheme().Icon(name)
}

// Size gives the toolkit's own sizes, in pixels of the glass.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	text := func(px float32) float32 { return px * t.unit * t.opt.Text }
	switch name {
	case theme.SizeNameText:
		return text(18)
	case theme.SizeNameCaptionText:
		return text(16)
	case theme.SizeNameSubHeadingText:
		return text(22)
	case theme.SizeNameHeadingText:
		return text(30)
	case theme.SizeNamePadding, theme.SizeNameLineSpacing:
		return 8 * t.unit
	case theme.SizeNameInnerPadding:
		return 16 * t.unit
	case theme.SizeNameInlineIcon:
		return text(24)
	case theme.SizeNameScrollBar:
		return 20 * t.unit
	case theme.SizeNameScrollBarSmall:
		return 8 * t.unit
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return RadiusKey * t.unit
	case theme.SizeNameSeparatorThickness, theme.SizeNameInputBorder:
		return 1
	}
	return theme.DefaultTheme().Size(name)
}

var fallback = New(Options{})

// Current is the theme the window is drawn in now; where the app has another
// theme, it is ours for night.
func Current() *Theme {
	if t, ok := theme.Current().(*Theme); ok {
		return t
	}
	return fallback
}

// Color is the colour of a token in the theme of the moment. Ask for it while
// drawing, never before.
func Color(token fyne.ThemeColorName) color.Color { return Current().Color(token, 0) }
