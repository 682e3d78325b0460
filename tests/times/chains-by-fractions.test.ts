import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes } from '../../src/times/index'
import { timesOf } from './text'

// A bread from its first step to its last, both held: hands of exact times, between them waits with a usual time of their own. By
// exact fractions (Python's fractions): every set of waits at their least or most tried, the others giving the same part
// of their leeway, and the cheapest of those within their bounds kept. `w0`, `w1`, … are the moments after each wait.
const chains: readonly (readonly [text: string, at: readonly number[], cost: number])[] = [
  [
    'w0 25 h0 \n h0 130-170:150 w1 \n w1 15 h1 \n h1 300-480:336 w2 \n w2 20 h2 \n h2 210-400:306 w3 \n w0 at 0 \n w3 at 921',
    [7451 / 41, 23084 / 41, 921],
    4761 / 410,
  ],
  [
    'w0 30 h0 \n h0 165-265:226 w1 \n w1 25 h1 \n h1 130-260:170 w2 \n w2 20 h2 \n h2 200-290:238 w3 \n w3 15 h3 \n h3 90-230:95 w4 \n w0 at 0 \n w4 at 832',
    [5953 / 23, 915 / 2, 16515 / 23, 832],
    169 / 460,
  ],
  [
    'w0 5 h0 \n h0 100-155:130 w1 \n w1 15 h1 \n h1 45-195:107 w2 \n w2 5 h2 \n h2 20-70:45 w3 \n w3 15 h3 \n h3 160-340:303 w4 \n w4 10 h4 \n h4 85-245:94 w5 \n w5 30 h5 \n h5 165-260:184 w6 \n w0 at 0 \n w6 at 947',
    [9337 / 69, 17815 / 69, 7095 / 23, 14433 / 23, 50539 / 69, 947],
    8 / 345,
  ],
  [
    'w0 25 h0 \n h0 165-365:286 w1 \n w1 5 h1 \n h1 215-415:405 w2 \n w2 15 h2 \n h2 15-65:34 w3 \n w3 15 h3 \n h3 180-295:258 w4 \n w4 20 h4 \n h4 240-415:246 w5 \n w0 at 0 \n w5 at 1253',
    [33143 / 113, 77473 / 113, 82510 / 113, 993, 1253],
    91568 / 19775,
  ],
  [
    'w0 5 h0 \n h0 225-420:258 w1 \n w1 20 h1 \n h1 10-100:80 w2 \n w2 10 h2 \n h2 225-265:259 w3 \n w3 25 h3 \n h3 10-155:119 w4 \n w4 20 h4 \n h4 190-350:288 w5 \n w0 at 0 \n w5 at 1141',
    [3929 / 14, 5443 / 14, 27779 / 42, 17189 / 21, 1141],
    361 / 70,
  ],
  [
    'w0 5 h0 \n h0 295-395:354 w1 \n w1 25 h1 \n h1 105-115:111 w2 \n w2 10 h2 \n h2 100-260:179 w3 \n w3 20 h3 \n h3 60-220:200 w4 \n w0 at 0 \n w4 at 789',
    [14287 / 43, 20020 / 43, 26307 / 43, 789],
    2645 / 86,
  ],
  [
    'w0 5 h0 \n h0 145-340:283 w1 \n w1 5 h1 \n h1 30-110:64 w2 \n w2 5 h2 \n h2 260-290:281 w3 \n w3 20 h3 \n h3 115-260:132 w4 \n w0 at 0 \n w4 at 944',
    [345, 19958 / 45, 33233 / 45, 944],
    292379 / 5850,
  ],
  [
    'w0 10 h0 \n h0 25-70:32 w1 \n w1 10 h1 \n h1 205-250:250 w2 \n w2 10 h2 \n h2 100-250:138 w3 \n w3 10 h3 \n h3 205-270:257 w4 \n w4 25 h4 \n h4 30-105:35 w5 \n w5 15 h5 \n h5 40-170:58 w6 \n w0 at 0 \n w6 at 714',
    [35, 2939 / 11, 4149 / 11, 604, 659, 714],
    1788208 / 32175,
  ],
  [
    'w0 5 h0 \n h0 245-380:279 w1 \n w1 30 h1 \n h1 145-180:165 w2 \n w2 15 h2 \n h2 200-365:325 w3 \n w0 at 0 \n w3 at 975',
    [385, 595, 975],
    953102 / 10395,
  ],
  [
    'w0 30 h0 \n h0 300-325:304 w1 \n w1 30 h1 \n h1 100-155:136 w2 \n w2 25 h2 \n h2 225-395:299 w3 \n w3 5 h3 \n h3 185-265:218 w4 \n w4 15 h4 \n h4 185-270:217 w5 \n w0 at 0 \n w5 at 1364',
    [28147 / 83, 42860 / 83, 72642 / 83, 92511 / 83, 1364],
    1445 / 83,
  ],
  [
    'w0 20 h0 \n h0 265-350:312 w1 \n w1 10 h1 \n h1 245-375:290 w2 \n w2 5 h2 \n h2 235-250:245 w3 \n w3 5 h3 \n h3 190-210:192 w4 \n w0 at 0 \n w4 at 1104',
    [681 / 2, 1307 / 2, 905, 1104],
    5 / 2,
  ],
  [
    'w0 20 h0 \n h0 85-215:203 w1 \n w1 5 h1 \n h1 110-150:143 w2 \n w2 10 h2 \n h2 180-310:193 w3 \n w3 5 h3 \n h3 145-225:159 w4 \n w4 10 h4 \n h4 300-465:354 w5 \n w5 10 h5 \n h5 230-360:320 w6 \n w0 at 0 \n w6 at 1406',
    [29429 / 135, 49201 / 135, 5062 / 9, 97654 / 135, 145936 / 135, 1406],
    676 / 675,
  ],
  [
    'w0 20 h0 \n h0 205-325:306 w1 \n w1 15 h1 \n h1 130-180:176 w2 \n w2 20 h2 \n h2 215-315:295 w3 \n w3 5 h3 \n h3 280-405:346 w4 \n w4 30 h4 \n h4 195-385:250 w5 \n w0 at 0 \n w5 at 1299',
    [11402 / 39, 54913 / 117, 9832 / 13, 125455 / 117, 1299],
    26896 / 585,
  ],
  [
    'w0 5 h0 \n h0 30-70:32 w1 \n w1 5 h1 \n h1 65-135:90 w2 \n w2 5 h2 \n h2 165-325:254 w3 \n w3 25 h3 \n h3 145-305:221 w4 \n w4 20 h4 \n h4 300-445:382 w5 \n w5 10 h5 \n h5 155-195:167 w6 \n w0 at 0 \n w6 at 1092',
    [35, 13242 / 115, 1701 / 5, 63509 / 115, 106201 / 115, 1092],
    29883 / 1150,
  ],
  [
    'w0 10 h0 \n h0 125-255:245 w1 \n w1 15 h1 \n h1 185-275:199 w2 \n w2 15 h2 \n h2 270-330:318 w3 \n w0 at 0 \n w3 at 740',
    [4221 / 19, 8021 / 19, 740],
    2446 / 171,
  ],
  [
    'w0 15 h0 \n h0 160-180:171 w1 \n w1 5 h1 \n h1 110-135:132 w2 \n w2 10 h2 \n h2 225-380:345 w3 \n w0 at 0 \n w3 at 555',
    [175, 2668 / 9, 555],
    13633 / 180,
  ],
  [
    'w0 30 h0 \n h0 100-255:161 w1 \n w1 30 h1 \n h1 60-80:66 w2 \n w2 30 h2 \n h2 15-205:74 w3 \n w3 30 h3 \n h3 35-170:128 w4 \n w4 15 h4 \n h4 105-170:164 w5 \n w0 at 0 \n w5 at 739',
    [21924 / 113, 32816 / 113, 44986 / 113, 63137 / 113, 739],
    121 / 565,
  ],
  [
    'w0 10 h0 \n h0 240-395:281 w1 \n w1 30 h1 \n h1 65-140:70 w2 \n w2 5 h2 \n h2 200-345:269 w3 \n w0 at 0 \n w3 at 786',
    [25576 / 75, 34891 / 75, 786],
    14641 / 375,
  ],
  [
    'w0 5 h0 \n h0 150-290:193 w1 \n w1 25 h1 \n h1 20-205:152 w2 \n w2 10 h2 \n h2 120-160:124 w3 \n w0 at 0 \n w3 at 581',
    [16470 / 73, 32055 / 73, 581],
    5184 / 365,
  ],
  [
    'w0 10 h0 \n h0 160-185:181 w1 \n w1 20 h1 \n h1 215-240:230 w2 \n w2 15 h2 \n h2 260-285:261 w3 \n w0 at 0 \n w3 at 732',
    [195, 901 / 2, 732],
    153 / 50,
  ],
]

for (const [text, at, cost] of chains)
  test(`${at.length} waits in ${at.at(-1)} min cost ${cost.toFixed(3)}`, () => {
    const answer = solveTimes(timesOf(text))
    assert.ok(answer.kind === 'plan' && answer.proven)
    for (const [i, time] of at.entries()) {
      const found = answer.at.get(`w${i + 1}`)!
      assert.ok(Math.abs(found - time) < 1e-8, `w${i + 1} at ${found}, not ${time}`)
    }
    assert.ok(Math.abs(answer.cost - cost) < 1e-9 * Math.max(1, cost))
  })
