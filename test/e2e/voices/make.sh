#!/bin/sh
# Makes the voices of spoken-answers.test.ts anew, with espeak-ng and sox: each phrase by two made voices.
cd "$(dirname "$0")" || exit 1
make() {
  for voice in en-us+f4 en-us+m3; do
    file="$(echo "$1" | tr ' ' '-')-${voice#en-us+}.ogg"
    espeak-ng -v "$voice" -s 150 --stdout "$1" | sox -q - -r 16000 -c 1 -C 3 "$file" vol 0.6
  done
}
for phrase in "that one clicked" "keeps turning" "cancel the last one" "how tight" "next one" "one is missing" \
  "all of it is so" "it is so" "something is wrong" "spark strong" "air cleaner blocked" "the one before" \
  "take a number" "a higher number" "further down" "leave the numbers" "one five" "three five" \
  "the radio said it would rain on sunday"; do make "$phrase"; done
