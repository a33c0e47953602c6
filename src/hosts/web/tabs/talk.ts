/** What the tabs of this address say to each other. */
export type TabNews =
  | { readonly kind: 'stands'; readonly book: string; readonly version: string }
  /** Another tab wants to change this book: whoever holds it saves and lets it go. */
  | { readonly kind: 'let go'; readonly book: string };

export interface Talk {
  tell(news: TabNews): void;
  /** Calls back with what other tabs tell of a book. */
  onNews(book: string, listener: (news: TabNews) => void): void;
}

export function createTalk(): Talk {
  const channel = new BroadcastChannel('pour-ledger');
  return {
    tell(news) {
      channel.postMessage(news);
    },
    onNews(book, listener) {
      channel.addEventListener('message', ({ data }: MessageEvent<TabNews>) => {
        if (data.book === book) listener(data);
      });
    },
  };
}
