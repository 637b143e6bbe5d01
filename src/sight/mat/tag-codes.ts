/**
 * The first 132 tags of the family MIP 36h12, of which any two differ in at least 12 bits however they are turned.
 *
 * Source: the list published with the ArUco library (R. Muñoz Salinas, 2017, BSD license); test/sight/tag-codes.test.ts
 * holds it against a copy of somebody else. Each is 36 bits, nine hexadecimal digits: row by row from the upper left,
 * 1 is white.
 */
export const tagCodes: readonly string[] = (
  'd2b63a09d 6001134e5 1206fbe72 ff8ad6cb4 85da9bc49 b461afe9c 6db51fe13 5248c541f 008f34503 8ea462ece ' +
  'eac2be76d 1af615c44 b48a49f27 2e4e1283b 78b1f2fa8 27d34f57e 89222fff1 4c1669406 bf49b3511 dc191cd5d ' +
  '11d7c3f85 16a130e35 e29f27eff 428d8ae0c 90d548477 2319cbc93 c3b0c3dfc 0424bccc9 2a081d630 762743d96 ' +
  'd0645bf19 f38d7fd60 c6cbf9a10 3c1be7c65 276f75e63 4490a3f63 da60acd52 3cc68df59 ab46f9dae 88d533d78 ' +
  'b6d62ec21 b3c02b646 22e56d408 ac5f5770a aaa993f66 4caa07c8d 5c9b4f7b0 aa9ef0e05 0705c5750 ac81f545e ' +
  '735b91e74 8cc35cee4 e44694d04 b5e121de0 261017d0f f1d439eb5 a1a33ac96 174c62c02 1ee27f716 8b1c5ece9 ' +
  '6a05b0c6a 0d0568dfc 192d25e5f 1adbeccc8 cfec87f00 d0b9dde7a 88dcef81e 445681cb9 dbb2ffc83 a48d96df1 ' +
  'b72cc2e7d 0c295b53f f49832704 9968edc29 9e4e1af85 8683e2d1b 810b45c04 6ac44bfe2 645346615 3990bd598 ' +
  '1c9ed0f6a c26729d65 83993f795 3ac05ac5d 357adff3b 0d5c05565 2f547ef44 86c115041 640fd9e5f ce08bbcf7 ' +
  '109bb343e c21435c92 35b4dfce4 459752cf2 ec915b82c 51881eed0 2dda7dc97 2e0142144 42e890f99 9a8856527 ' +
  '8e80d9d80 891cbcf34 25dd82410 239551d34 8fe8f0c70 94106a970 82609b40c 0fc9caf36 688181d11 718613c08 ' +
  '0f1ab7629 a357bfc18 4c03b7a46 204dedce6 ad6300d37 84cc4cd09 42160e5c4 87d2adfa8 7850e7749 4e750fc7c ' +
  'bf2e5dfda d88324da5 234b52f80 378204514 abdf2ad53 365e78ef9 49caa6ca2 03c39ddf3 c68c5385d 5bfcbbf67 ' +
  '623241e21 abc90d5cc'
).split(' ');
