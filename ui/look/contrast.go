package look

import (
	"image/color"
	"math"
)

// Contrast is how far two colours stand apart, from 1 to 21, as WCAG 2.1
// defines it under "contrast ratio" and "relative luminance":
// L = 0.2126 R + 0.7152 G + 0.0722 B with each channel c over 0.03928 as
// ((c + 0.055) / 1.055) ^ 2.4, else c / 12.92; (L1 + 0.05) / (L2 + 0.05).
func Contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	ch := func(v uint8) float64 {
		f := float64(v) / 255
		if f <= 0.03928 {
			return f / 12.92
		}
		return math.Pow((f+0.055)/1.055, 2.4)
	}
	return 0.2126*ch(n.R) + 0.7152*ch(n.G) + 0.0722*ch(n.B)
}
