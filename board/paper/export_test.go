package paper

// Draw is the text as the print can show it, and what the foot then says.
func Draw(text string) (shown, note string) {
	p := newPress(Letter, head{})
	p.page()
	shown = p.draw(text)
	return shown, p.gaps[0].words()
}

// Drawn tells whether the print has a shape for a letter.
func Drawn(r rune) bool { return drawn(r) }
