#!/bin/sh
# Makes the product's font files again from Debian's fonts-inter, and the
# licence text beside them. Needs: apt-get install fonts-inter python3-fonttools
# The result is byte for byte the same for the same package versions
# (made with fonts-inter 4.0~beta7+ds-1 and python3-fonttools 4.38.0).
set -eu
cd "$(dirname "$0")"
src=${INTER_DIR:-/usr/share/fonts/opentype/inter}
py=${PYTHON:-/usr/bin/python3}

for weight in Regular Medium Bold; do
	"$py" make.py "$src/Inter-$weight.otf" "GloamlineSans-$weight.ttf" "$weight"
done

# The licence travels with the fonts (condition 2 of the Open Font License).
{
	echo "Copyright 2016-2022 The Inter Project Authors"
	echo
	echo "The three font files in this folder are a Modified Version of the Inter"
	echo "typeface: converted to TrueType outlines, cut down to the characters this"
	echo "program uses, with tabular figures as the default figures, and renamed"
	echo "\"Gloamline Sans\". \"Inter\" is a trademark of its author."
	echo
	echo "This Font Software is licensed under the SIL Open Font License, Version 1.1."
	echo
	awk '/^License: OFL-1.1$/{on=1; print "SIL OPEN FONT LICENSE Version 1.1"; print ""; next}
	     on && /^License:/{exit}
	     on {sub(/^ /,""); if ($0==".") $0=""; print}' /usr/share/doc/fonts-inter/copyright
} | sed -e :a -e '/^\n*$/{$d;N;ba' -e '}' >OFL.txt

ls -l -- *.ttf OFL.txt
