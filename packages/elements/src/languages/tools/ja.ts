import type { Table } from "@meshwright/calc/languages";
import type { ToolWords } from "./en.js";

/** What the elements beyond an article's own say in Japanese. */
export const words: Table<ToolWords> = {
  copyList: "テキストをコピー",
  copied: "コピーしました。",
  notCopied: "このページではコピーできません。テキストを選択してください。",
  printPage: "印刷",

  question: "総減速比を{0}から{1}に収め、取り付けられる二つの歯車は？",
  rangeFrom: "範囲の始まり",
  rangeTo: "範囲の終わり",
  among: "対象",
  amongAll: "一覧のすべての部品",
  amongHad: "入手できる部品",
  amongOwned: "手持ちの部品",
  sleeves: "スリーブとアダプター板も使う",
  sortBy: "並べ順",
  sorts: {
    nearest: "範囲の中央に近い順",
    cheapest: "安い順",
    "fewest-new": "新しい部品が少ない順",
    closest: "軸間距離が短い順",
  },
  morePairs: "さらに{0}組",
  moreMisses: "惜しい組をさらに表示",
  choose: "採用",
  chosen: "採用中",
  looking: "検索中：組の{0}を確認。",
  stop: "停止",
  stopped: "停止しました。ここまでの結果を表示しています。",
  numberOnly: "0より大きい数。",

  letTurn: "回す",
  holdStill: "止める",

  editor: {
    shared: "モーターから分岐まで",
    add: "段を追加",
    up: "上へ：{0}",
    down: "下へ：{0}",
    remove: "削除：{0}",
    gearMore: "歯車を1枚増やす：{0}",
    gearLess: "歯車を1枚減らす：{0}",
    more: "すべての項目：{0}",
    kinds: {
      pair: "歯車の組",
      train: "歯車列",
      belt: "ベルトまたはチェーン",
      worm: "ウォーム",
      planetary: "遊星歯車",
      cycloidal: "サイクロイド減速機",
      measured: "回して数えた比",
      published: "表示された比",
      selectable: "変速機",
    },
  },
};
