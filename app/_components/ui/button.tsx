import type { AnchorHTMLAttributes, ButtonHTMLAttributes } from 'react'

/** `go` is the one thing to do here, `plain` another, `stop` cannot be taken back, `text` sits inside a line. */
export type ButtonTone = 'go' | 'plain' | 'stop' | 'text'

const toneClass: Record<ButtonTone, string> = {
  go: 'button button-go',
  plain: 'button',
  stop: 'button button-stop',
  text: 'button button-text',
}

type ButtonProps = ButtonHTMLAttributes<HTMLButtonElement> & { tone?: ButtonTone }

export function Button({ tone = 'plain', type = 'submit', className = '', ...rest }: ButtonProps) {
  return <button type={type} className={`${toneClass[tone]} ${className}`} {...rest} />
}

type LinkButtonProps = AnchorHTMLAttributes<HTMLAnchorElement> & { href: string; tone?: ButtonTone }

/** Looks like a button, goes somewhere. */
export function LinkButton({ tone = 'plain', className = '', children, ...rest }: LinkButtonProps) {
  return (
    <a className={`${toneClass[tone]} ${className}`} {...rest}>
      {children}
    </a>
  )
}
